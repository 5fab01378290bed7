using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanliness;

/// <summary>A tank whose oil a pump sends through a filter and back, while particles come in at a steady rate.</summary>
/// <remarks>
/// <para>Well mixed: V·dN/dt = R − Q·e·N; N∞ = R/(Q·e); N(t) = N∞ + (N₀ − N∞)·exp(−Q·e·t/V).</para>
/// <para>
/// N: cumulative count at one size, per mL; V: oil volume, mL; Q: flow, mL/min; e = 1 − 1/β; R: particles that come in, per minute;
/// t: time, min. Dead corners, a flow that varies and a filter that ages are not in it.
/// </para>
/// <para>Source: derived, particle balance of a well-mixed tank.</para>
/// </remarks>
/// <example><code>new KidneyLoop(Volume.FromLiters(1000), VolumeFlow.FromLitersPerMinute(20), new FilterBeta(200), 5e6)</code></example>
public sealed partial record KidneyLoop
{
    /// <summary>A loop.</summary>
    /// <param name="oilVolume">Oil in the tank, 1 mL to 10⁶ m³.</param>
    /// <param name="flow">Flow through the filter, above 0 to 10⁹ mL/min.</param>
    /// <param name="filter">The filter at the size in question; use a ratio as in service, below that of the test.</param>
    /// <param name="ingressionPerMinute">Particles of that size and above that come in, per minute, 0 to 10¹⁵.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public KidneyLoop(Volume oilVolume, VolumeFlow flow, FilterBeta filter, double ingressionPerMinute)
    {
        Guard.InRange(oilVolume.CubicMeters, 1e-6, 1e6, "m³", nameof(oilVolume));
        Guard.InRange(flow.MillilitersPerMinute, 1e-3, 1e9, "mL/min", nameof(flow));
        OilVolume = oilVolume;
        Flow = flow;
        Filter = Guard.NotNull(filter);
        IngressionPerMinute = Guard.InRange(ingressionPerMinute, 0, 1e15, "per min");
    }

    /// <summary>Oil in the tank.</summary>
    public Volume OilVolume { get; }

    /// <summary>Flow through the filter.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>The filter at the size in question.</summary>
    public FilterBeta Filter { get; }

    /// <summary>Particles that come in, per minute.</summary>
    public double IngressionPerMinute { get; }

    /// <summary>The count in the tank that the loop tends to, per mL.</summary>
    public double SteadyPerMillilitre => IngressionPerMinute / CleanedMillilitrePerMinute;

    /// <summary>The count behind the filter once the tank is steady, per mL.</summary>
    public double SteadyDownstreamPerMillilitre => Filter.Downstream(SteadyPerMillilitre);

    private double CleanedMillilitrePerMinute => Flow.MillilitersPerMinute * Filter.Efficiency.DecimalFractions;

    private double RatePerMinute => CleanedMillilitrePerMinute / OilVolume.Milliliters;

    /// <summary>The particles that come in, from the count at which a loop has settled: R = N·Q·e.</summary>
    /// <param name="steadyPerMillilitre">Settled count in the tank, 0 or more.</param>
    /// <param name="flow">Flow through the filter, above 0.</param>
    /// <param name="filter">The filter at the size in question.</param>
    /// <returns>Particles per minute.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static double IngressionPerMinuteFrom(double steadyPerMillilitre, VolumeFlow flow, FilterBeta filter) =>
        Guard.InRange(steadyPerMillilitre, 0, 1e9, "per mL")
        * Guard.InRange(flow.MillilitersPerMinute, 1e-3, 1e9, "mL/min", nameof(flow))
        * Guard.NotNull(filter).Efficiency.DecimalFractions;

    /// <summary>The count in the tank after a time.</summary>
    /// <param name="startPerMillilitre">Count at the start, 0 to 10⁹.</param>
    /// <param name="time">Time of running, 0 or more.</param>
    /// <returns>Per mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public double CountAfter(double startPerMillilitre, TimeSpan time)
    {
        Guard.InRange(startPerMillilitre, 0, 1e9, "per mL");
        Guard.NotNegative(time.TotalMinutes, "min", nameof(time));
        return MixedTank.After(startPerMillilitre, SteadyPerMillilitre, RatePerMinute * time.TotalMinutes);
    }

    /// <summary>The time to bring the tank down to a count, t = V/(Q·e)·ln((N₀ − N∞)/(N − N∞)).</summary>
    /// <param name="startPerMillilitre">Count at the start, 0 to 10⁹.</param>
    /// <param name="targetPerMillilitre">
    /// Count to be reached, above 0 to 10⁹; for a target scale number its <see cref="Iso4406.UpperLimitPerMillilitre"/>.
    /// </param>
    /// <returns>
    /// Expected after the time; already there; or never, where the steady state is not below the target: more flow, a better filter or less ingression is
    /// needed.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public Arrival<TimeSpan> TimeTo(double startPerMillilitre, double targetPerMillilitre)
    {
        Guard.InRange(startPerMillilitre, 0, 1e9, "per mL");
        Guard.InRange(targetPerMillilitre, 1e-6, 1e9, "per mL");
        return startPerMillilitre <= targetPerMillilitre ? new Arrival<TimeSpan>.Already(TimeSpan.Zero)
            : SteadyPerMillilitre >= targetPerMillilitre ? new Arrival<TimeSpan>.Never()
            : new Arrival<TimeSpan>.Expected(
                Elapsed.FromMinutes(
                    MixedTank.TimeConstantsTo(startPerMillilitre, SteadyPerMillilitre, targetPerMillilitre)
                        / RatePerMinute
                )
            );
    }

    /// <summary>Oil pumped over oil in the tank in a time.</summary>
    /// <param name="time">Time of running, 0 or more.</param>
    /// <returns>Turnovers.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative.</exception>
    public double Turnovers(TimeSpan time) =>
        Guard.NotNegative(time.TotalMinutes, "min", nameof(time)) * Flow.MillilitersPerMinute / OilVolume.Milliliters;

    /// <summary>The loop in one line.</summary>
    /// <returns>For example <c>1000 L, 20 L/min through β 200, steady at 251 per mL</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(OilVolume.Liters)} L, {PlainText.Number(Flow.LitersPerMinute)} L/min through {Filter}, "
        + $"steady at {PlainText.Number(SteadyPerMillilitre)} per mL";
}
