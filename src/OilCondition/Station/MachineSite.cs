using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>What a treatment finds at a machine: planned outages, power, hours in which it can be reached, and what a jar of its oil shows.</summary>
public sealed class MachineSite
{
    /// <summary>States the site. Name the arguments; what is left out is not known, and does not limit.</summary>
    /// <param name="place">Where it stands, as travel times name it; null for a place of its own.</param>
    /// <param name="outages">Planned outages, in any order; null for none that is known.</param>
    /// <param name="power">Electrical power at hand for a treatment, 0 to 100 MW; null where it is enough.</param>
    /// <param name="reachablePerDay">Hours a day in which somebody can stand by, above 0 to 24 h; null for 24 h.</param>
    /// <param name="emulsifiedShare">Share of the free water that does not settle in a jar, 0 to 1; null where nobody looked.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure lies outside its range.</exception>
    public MachineSite(
        string? place = null,
        IReadOnlyList<Outage>? outages = null,
        Power? power = null,
        TimeSpan? reachablePerDay = null,
        Ratio? emulsifiedShare = null
    )
    {
        Guard.InRange((double)(power?.Kilowatts ?? 0), 0, 1e5, "kW", nameof(power));
        ReachablePerDay = reachablePerDay ?? Elapsed.FromDays(1);
        Guard.InRange(ReachablePerDay.TotalHours, 0.01, 24, "h", nameof(reachablePerDay));
        Guard.InRange(emulsifiedShare?.DecimalFractions ?? 0, 0, 1, "(ratio)", nameof(emulsifiedShare));
        Place = place;
        Outages = [.. (outages ?? []).OrderBy(one => one.From)];
        Power = power;
        EmulsifiedShare = emulsifiedShare;
    }

    /// <summary>Where it stands; null for a place of its own.</summary>
    public string? Place { get; }

    /// <summary>Planned outages, in order.</summary>
    public IReadOnlyList<Outage> Outages { get; }

    /// <summary>Electrical power at hand for a treatment; null where it is enough.</summary>
    public Power? Power { get; }

    /// <summary>Hours a day in which somebody can stand by.</summary>
    public TimeSpan ReachablePerDay { get; }

    /// <summary>Share of the free water that does not settle in a jar; null where nobody looked.</summary>
    public Ratio? EmulsifiedShare { get; }

    /// <summary>The site in a few words.</summary>
    /// <returns>For example <c>2 outages, 10 kW at hand, reachable 9 h a day</c>.</returns>
    public override string ToString() =>
        $"{Outages.Count} outages"
        + (Power is { } power ? $", {PlainText.Number((double)power.Kilowatts)} kW at hand" : "")
        + $", reachable {PlainText.Number(ReachablePerDay.TotalHours)} h a day";
}
