using OilCondition.Cleanliness;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>A purifier on a side loop of a well-mixed oil charge: mass balance of a stirred tank.</summary>
/// <remarks>
/// V dc/dt = −η Q (c − floor) + V g, hence c(t) = level + (start − level) exp(−k t) with k = η Q / V and level = floor + g / k.
/// V: charge, Q: flow through the purifier, η: removal per pass on the excess over the floor, g: ingress as rise of the content per hour.
/// Derived (continuous stirred tank). Valid while the charge is well mixed: dead corners make the fall slower than η says.
/// Charge 10⁻⁶ to 10¹² L, flow 10⁻⁶ to 10¹² L/h, removal 10⁻⁹ to 1, contents 0 to 10¹² in any unit, times 0 to 10¹² h; outside, an error
/// names the argument. Particles with a filter ratio and ingression have <see cref="KidneyLoop"/>, which is the same balance.
/// </remarks>
/// <example>
/// <code>
/// var loop = new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(20));
/// var perHour = loop.TurnoversPerHour;                                        // 0.6
/// var after = loop.ValueAfter(1000, 50, Ratio.FromPercent(80), TimeSpan.FromHours(4));   // 189 mg/kg
/// </code>
/// </example>
public sealed class CleanupLoop
{
    internal const double Smallest = 1e-6;
    internal const double Largest = 1e12;

    private const double LongestHours = 1e8;

    /// <summary>A loop from its charge and its flow.</summary>
    /// <param name="charge">Volume of oil that circulates, 10⁻⁶ to 10¹² L.</param>
    /// <param name="flow">Flow through the purifier, 10⁻⁶ to 10¹² L/h.</param>
    /// <exception cref="ArgumentOutOfRangeException">A quantity lies outside its range.</exception>
    public CleanupLoop(Volume charge, VolumeFlow flow)
    {
        Guard.InRange(charge.Liters, Smallest, Largest, "L", nameof(charge));
        Guard.InRange(flow.LitersPerHour, Smallest, Largest, "L/h", nameof(flow));
        Charge = charge;
        Flow = flow;
    }

    /// <summary>Volume of oil that circulates.</summary>
    public Volume Charge { get; }

    /// <summary>Flow through the purifier.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Charges that pass the purifier in an hour, Q / V.</summary>
    public double TurnoversPerHour => Flow.LitersPerHour / Charge.Liters;

    /// <summary>Share of the excess over the floor that is gone after a number of turnovers, 1 − exp(−η N).</summary>
    /// <param name="turnovers">Charges passed, N, 0 to 10¹².</param>
    /// <param name="removalPerPass">Removal per pass, η, 10⁻⁹ to 1.</param>
    /// <returns>The share, 0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static Ratio FractionRemoved(double turnovers, Ratio removalPerPass) =>
        Ratio.FromDecimalFractions(
            MixedTank.ShareGone(Efficiency(removalPerPass) * Guard.InRange(turnovers, 0, Largest, ""))
        );

    /// <summary>Turnovers that remove a share of the excess over the floor, −ln(1 − share) / η.</summary>
    /// <param name="fractionRemoved">The share, 0 to 1 − 10⁻¹⁵: the whole is never removed.</param>
    /// <param name="removalPerPass">Removal per pass, η, 10⁻⁹ to 1.</param>
    /// <returns>Charges to be passed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static double TurnoversFor(Ratio fractionRemoved, Ratio removalPerPass)
    {
        var share = Guard.InRange(fractionRemoved.DecimalFractions, 0, 1 - 1e-15, "", nameof(fractionRemoved));
        return -Math.Log(1 - share) / Efficiency(removalPerPass);
    }

    /// <summary>Charges that pass the purifier in a time.</summary>
    /// <param name="time">The time, 0 to 10⁸ h.</param>
    /// <returns>Turnovers.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time lies outside its range.</exception>
    public double Turnovers(TimeSpan time) =>
        TurnoversPerHour * Guard.InRange(time.TotalHours, 0, LongestHours, "h", nameof(time));

    /// <summary>Rate of the fall, k = η Q / V.</summary>
    /// <param name="removalPerPass">Removal per pass, η, 10⁻⁹ to 1.</param>
    /// <returns>The rate in 1/h.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The removal lies outside its range.</exception>
    public double RatePerHour(Ratio removalPerPass) => Efficiency(removalPerPass) * TurnoversPerHour;

    /// <summary>The content after a time.</summary>
    /// <param name="start">Content at the start, 0 to 10¹², any unit.</param>
    /// <param name="floor">Where the fall levels off, 0 to 10¹², in the same unit; see <see cref="LevelWithIngress"/>.</param>
    /// <param name="removalPerPass">Removal per pass, η, 10⁻⁹ to 1.</param>
    /// <param name="time">Time since the start, 0 to 10⁸ h.</param>
    /// <returns>The content, in the same unit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public double ValueAfter(double start, double floor, Ratio removalPerPass, TimeSpan time)
    {
        Content(start, nameof(start));
        Content(floor, nameof(floor));
        return MixedTank.After(start, floor, Efficiency(removalPerPass) * Turnovers(time));
    }

    /// <summary>The time from a start to a target.</summary>
    /// <param name="start">Content at the start, 0 to 10¹², any unit.</param>
    /// <param name="floor">Where the fall levels off, 0 to 10¹², in the same unit.</param>
    /// <param name="target">Content to reach, 0 to 10¹², in the same unit.</param>
    /// <param name="removalPerPass">Removal per pass, η, 10⁻⁹ to 1.</param>
    /// <param name="time">ln((start − floor) / (target − floor)) / k; zero if the start is at the target or below, or it is never reached.</param>
    /// <returns>False if the target is never reached because it does not lie above the floor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public bool TryTimeTo(double start, double floor, double target, Ratio removalPerPass, out TimeSpan time)
    {
        Content(start, nameof(start));
        Content(floor, nameof(floor));
        Content(target, nameof(target));
        var rate = RatePerHour(removalPerPass);
        var falls = start > target && target > floor;
        time = falls ? Elapsed.FromHours(MixedTank.TimeConstantsTo(start, floor, target) / rate) : TimeSpan.Zero;
        return falls || (start <= target && floor <= target);
    }

    /// <summary>Where the content levels off when something comes in all the time, floor + g / k.</summary>
    /// <param name="floor">Floor of the purifier without ingress, 0 to 10¹², any unit.</param>
    /// <param name="ingressPerHour">Rise of the content that the ingress would cause with the loop shut, g, 0 to 10¹² per hour.</param>
    /// <param name="removalPerPass">Removal per pass, η, 10⁻⁹ to 1.</param>
    /// <returns>The level, in the same unit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public double LevelWithIngress(double floor, double ingressPerHour, Ratio removalPerPass) =>
        Content(floor, nameof(floor))
        + Guard.InRange(ingressPerHour, 0, Largest, "per hour") / RatePerHour(removalPerPass);

    /// <summary>Charge, flow and turnovers.</summary>
    /// <returns>For example <c>2000 L at 1200 L/h, 0.6 turnovers per h</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Charge.Liters)} L at {PlainText.Number(Flow.LitersPerHour)} L/h, {PlainText.Number(TurnoversPerHour)} turnovers per h";

    private static double Content(double value, string name) => Guard.InRange(value, 0, Largest, "", name);

    private static double Efficiency(Ratio removalPerPass) =>
        Guard.InRange(removalPerPass.DecimalFractions, 1e-9, 1, "", nameof(removalPerPass));
}
