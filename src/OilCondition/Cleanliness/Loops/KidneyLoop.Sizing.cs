using MathNet.Numerics.RootFinding;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanliness;

/// <content>
/// The balance turned round: the flow or the filter that a target needs at one size. To hold: Q·e = R/N, the flow whose steady state is the target; the count
/// comes to it from above only in endless time, so take more. To reach in a time: the Q·e at which N(t) = N; found by Brent's method between bounds that
/// the balance gives. Q = (Q·e)/e for a filter, β = 1/(1 − (Q·e)/Q) for a flow.
/// </content>
public sealed partial record KidneyLoop
{
    private const double HighestFlow = 1e9;
    private const double HighestBeta = 1e7;
    private const double LowestBeta = 1.000001;

    /// <summary>The flow whose steady state is a target.</summary>
    /// <param name="targetPerMillilitre">Count to be held, 10⁻⁶ to 10⁹ per mL.</param>
    /// <param name="filter">The filter at the size in question.</param>
    /// <param name="ingressionPerMinute">Particles that come in, per minute, 0 to 10¹⁵.</param>
    /// <param name="flow">The least flow; 0 where nothing comes in. The end of the range, 10⁹ mL/min, where none is enough.</param>
    /// <returns>Whether there is such a flow.</returns>
    /// <exception cref="ArgumentNullException">The filter is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static bool TryFlowToHold(
        double targetPerMillilitre,
        FilterBeta filter,
        double ingressionPerMinute,
        out VolumeFlow flow
    ) => TryFlow(CleanedToHold(targetPerMillilitre, ingressionPerMinute), filter, out flow);

    /// <summary>The flow that brings a tank to a target in a time and holds it there.</summary>
    /// <param name="startPerMillilitre">Count at the start, 0 to 10⁹ per mL.</param>
    /// <param name="targetPerMillilitre">Count to be reached, 10⁻⁶ to 10⁹ per mL.</param>
    /// <param name="time">Time for it, above 0 to 10⁷ min.</param>
    /// <param name="oilVolume">Oil in the tank, 1 mL to 10⁶ m³.</param>
    /// <param name="filter">The filter at the size in question.</param>
    /// <param name="ingressionPerMinute">Particles that come in, per minute, 0 to 10¹⁵.</param>
    /// <param name="flow">
    /// The least flow; for a start at or below the target the one that holds it. The end of the range, 10⁹ mL/min, where none is enough.
    /// </param>
    /// <returns>Whether there is such a flow.</returns>
    /// <exception cref="ArgumentNullException">The filter is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static bool TryFlowToReach(
        double startPerMillilitre,
        double targetPerMillilitre,
        TimeSpan time,
        Volume oilVolume,
        FilterBeta filter,
        double ingressionPerMinute,
        out VolumeFlow flow
    ) =>
        TryFlow(
            CleanedToReach(startPerMillilitre, targetPerMillilitre, time, oilVolume, ingressionPerMinute),
            filter,
            out flow
        );

    /// <summary>The filtration ratio whose steady state is a target.</summary>
    /// <param name="targetPerMillilitre">Count to be held, 10⁻⁶ to 10⁹ per mL.</param>
    /// <param name="flow">Flow through the filter, above 0 to 10⁹ mL/min.</param>
    /// <param name="ingressionPerMinute">Particles that come in, per minute, 0 to 10¹⁵.</param>
    /// <param name="beta">The least ratio; 1 where no filter is needed. The end of the range, 10⁷, where none is enough.</param>
    /// <returns>False where the flow is too small for any filter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static bool TryBetaToHold(
        double targetPerMillilitre,
        VolumeFlow flow,
        double ingressionPerMinute,
        out double beta
    ) => TryBeta(CleanedToHold(targetPerMillilitre, ingressionPerMinute), flow, out beta);

    /// <summary>The filtration ratio that brings a tank to a target in a time and holds it there.</summary>
    /// <param name="startPerMillilitre">Count at the start, 0 to 10⁹ per mL.</param>
    /// <param name="targetPerMillilitre">Count to be reached, 10⁻⁶ to 10⁹ per mL.</param>
    /// <param name="time">Time for it, above 0 to 10⁷ min.</param>
    /// <param name="oilVolume">Oil in the tank, 1 mL to 10⁶ m³.</param>
    /// <param name="flow">Flow through the filter, above 0 to 10⁹ mL/min.</param>
    /// <param name="ingressionPerMinute">Particles that come in, per minute, 0 to 10¹⁵.</param>
    /// <param name="beta">The least ratio; 1 where no filter is needed. The end of the range, 10⁷, where none is enough.</param>
    /// <returns>False where the flow is too small for any filter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static bool TryBetaToReach(
        double startPerMillilitre,
        double targetPerMillilitre,
        TimeSpan time,
        Volume oilVolume,
        VolumeFlow flow,
        double ingressionPerMinute,
        out double beta
    ) =>
        TryBeta(
            CleanedToReach(startPerMillilitre, targetPerMillilitre, time, oilVolume, ingressionPerMinute),
            flow,
            out beta
        );

    private static bool TryFlow(double cleaned, FilterBeta filter, out VolumeFlow flow)
    {
        var needed = cleaned / Guard.NotNull(filter).Efficiency.DecimalFractions;
        flow = VolumeFlow.FromMillilitersPerMinute(Math.Min(needed, HighestFlow));
        return needed <= HighestFlow;
    }

    private static bool TryBeta(double cleaned, VolumeFlow flow, out double beta)
    {
        var given = Guard.InRange(flow.MillilitersPerMinute, 1e-3, HighestFlow, "mL/min", nameof(flow));

        // Q/(Q − Q·e), which needs no difference of two numbers near 1.
        var needed =
            cleaned <= 0 ? 1
            : cleaned < given ? Math.Max(given / (given - cleaned), LowestBeta)
            : double.PositiveInfinity;
        beta = Math.Min(needed, HighestBeta);
        return needed <= HighestBeta;
    }

    /// <summary>Q·e, mL/min.</summary>
    private static double CleanedToHold(double targetPerMillilitre, double ingressionPerMinute) =>
        Guard.InRange(ingressionPerMinute, 0, 1e15, "per min")
        / Guard.InRange(targetPerMillilitre, 1e-6, 1e9, "per mL");

    private static double CleanedToReach(
        double startPerMillilitre,
        double targetPerMillilitre,
        TimeSpan time,
        Volume oilVolume,
        double ingressionPerMinute
    )
    {
        Guard.InRange(startPerMillilitre, 0, 1e9, "per mL");
        var hold = CleanedToHold(targetPerMillilitre, ingressionPerMinute);
        var minutes = Guard.InRange(time.TotalMinutes, 1e-6, 1e7, "min", nameof(time));
        var perMinute = 1e6 * Guard.InRange(oilVolume.CubicMeters, 1e-6, 1e6, "m³", nameof(oilVolume)) / minutes;
        var fall = startPerMillilitre / targetPerMillilitre;
        if (fall <= 1)
        {
            return hold;
        }

        // Without ingression it is V/t·ln(N₀/N). With it, more than that and more than what holds; twice the holding flow
        // leaves half the target to the steady state, and the other half bounds the rest.
        var lowest = Math.Max(hold, perMinute * Math.Log(fall));
        if (hold <= 0)
        {
            return lowest;
        }

        double ExcessAt(double cleaned)
        {
            var steady = ingressionPerMinute / cleaned;
            return ((steady + ((startPerMillilitre - steady) * Math.Exp(-cleaned / perMinute))) / targetPerMillilitre)
                - 1;
        }

        // The hundredth and the billionth keep the ends on either side of the target whatever the rounding.
        var highest = 1.01 * Math.Max(2 * hold, perMinute * Math.Log(2 * fall));
        var found = Brent.FindRoot(
            logarithm => ExcessAt(Math.Exp(logarithm)),
            Math.Log(lowest) - 1e-9,
            Math.Log(highest),
            1e-11,
            200
        );
        return Math.Max(lowest, Math.Exp(found));
    }
}
