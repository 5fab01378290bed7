using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>What a treatment comes to when its inputs are out by what they may be: hours and floor that are passed in 10, 50 and 90 of 100 cases.</summary>
/// <remarks>
/// Each input is varied by its standard error (<see cref="InputErrors"/>) in a fixed design of 31 cases, and each case is planned anew: the same task gives the same
/// band. It says nothing of what no input says: an oil that foams, a tank that is not mixed, a unit that is not the one described.
/// </remarks>
public sealed record TreatmentBand
{
    private readonly double[] hours;
    private readonly double[] floors;

    internal TreatmentBand(IReadOnlyList<TreatmentAssessment> cases)
        : this(cases.Select(one => (one.MeetsTarget ? one.RunTime : null, one.WaterFloor))) => Cases = cases;

    internal TreatmentBand(IEnumerable<(TimeSpan? Time, MassFraction Floor)> cases)
    {
        var all = cases.ToList();
        hours = [.. all.Select(one => one.Time?.TotalHours ?? double.PositiveInfinity).OrderBy(one => one)];
        floors = [.. all.Select(one => one.Floor.PartsPerMillion).OrderBy(one => one)];
        Reached = Ratio.FromDecimalFractions(hours.Count(Guard.IsFinite) / (double)hours.Length);
    }

    /// <summary>Share of the cases in which the target is reached within the horizon.</summary>
    public Ratio Reached { get; }

    /// <summary>Time that only one case in ten beats; null where it is not reached by then.</summary>
    public TimeSpan? TimeP10 => Time(0.1);

    /// <summary>Time that half of the cases need at most; null where it is not reached in half of them.</summary>
    public TimeSpan? TimeP50 => Time(0.5);

    /// <summary>Time that nine cases in ten need at most; null where it is not reached in nine of ten.</summary>
    public TimeSpan? TimeP90 => Time(0.9);

    /// <summary>Floor below which one case in ten comes.</summary>
    public MassFraction FloorP10 => MassFraction.FromPartsPerMillion(Quantile(floors, 0.1));

    /// <summary>Floor in the middle.</summary>
    public MassFraction FloorP50 => MassFraction.FromPartsPerMillion(Quantile(floors, 0.5));

    /// <summary>Floor below which nine cases in ten come.</summary>
    public MassFraction FloorP90 => MassFraction.FromPartsPerMillion(Quantile(floors, 0.9));

    /// <summary>The band in one line.</summary>
    /// <returns>For example <c>9.4 to 14 h, floor 58 to 103 mg/kg (10 to 90 of 100 cases)</c>.</returns>
    public override string ToString() =>
        $"{HoursText}, floor {PlainText.Number(FloorP10.PartsPerMillion, FloorP50.PartsPerMillion / 20)} to "
        + $"{PlainText.Number(FloorP90.PartsPerMillion, FloorP50.PartsPerMillion / 20)} mg/kg (10 to 90 of 100 cases)";

    /// <summary>The hours in a few words, as in a table.</summary>
    internal string HoursText =>
        (TimeP10, TimeP90) switch
        {
            ({ } early, { } late) => $"{Hours(early)} to {Hours(late)} h",
            ({ } early, null) => $"{Hours(early)} h or more, reached in {PlainText.Number(Reached.Percent, 10)} %",
            _ => $"reached in {PlainText.Number(Reached.Percent, 10)} %",
        };

    private static string Hours(TimeSpan time) => PlainText.Number(time.TotalHours, time.TotalHours / 20);

    /// <summary>The rows of the cases, equally likely; empty for a plan that is no row.</summary>
    internal IReadOnlyList<TreatmentAssessment> Cases { get; } = [];

    /// <summary>The time that a share of the cases needs at most; null where it is not reached in so many.</summary>
    internal TimeSpan? Time(double share) =>
        Quantile(hours, share) is var value && Guard.IsFinite(value) ? Elapsed.FromHours(value) : null;

    /// <summary>The value at place n q + ½ of the ordered ones: those of the design stand for equal shares.</summary>
    internal static double Quantile(double[] ordered, double share)
    {
        var place = share * ordered.Length - 0.5;
        var below = Math.Max(0, Math.Min(ordered.Length - 1, (int)Math.Floor(place)));
        var above = Math.Min(ordered.Length - 1, below + 1);
        return double.IsPositiveInfinity(ordered[above])
            ? double.PositiveInfinity
            : ordered[below] + (place - below) * (ordered[above] - ordered[below]);
    }
}
