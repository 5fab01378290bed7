using HarrowPoint;
using HarrowPoint.Generator;
using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.Examples;

/// <summary>The stories of the invented station in 200 redraws of its scatter.</summary>
public class HarrowPointRedrawTests
{
    private const int Count = 200;

    /// <summary>The stated false-alarm rate: at most one assessment of a healthy machine in fifty raises an alert.</summary>
    private const double StatedFalseAlarmRate = 0.02;

    private static readonly string Data = RepositoryFiles.PathOf("examples", "HarrowPoint", "Data");
    private static readonly Lazy<Redraws> All = new(() => Redraws.Of(Data, 1000, Count));

    [Fact]
    public void The_healthy_bearing_raises_no_more_false_alarms_than_stated()
    {
        var alarms = All.Value.Of("HP-TGB2").Where(one => one.Assessment.Alerts.Count > 0).ToList();

        alarms.Count.ShouldBeLessThanOrEqualTo(
            (int)(Count * StatedFalseAlarmRate),
            string.Join(", ", alarms.Select(one => $"seed {one.Seed}: {one.Assessment.Alerts[0].Key}"))
        );
    }

    [Theory]
    [InlineData("HP-TGB1", "water", FindingCode.RemainingLifeShort, "")]
    [InlineData("HP-TGB1", "water", FindingCode.CleanupRebounding, "")]
    [InlineData("HP-GOV1", "dirt", FindingCode.LimitPassed, "")]
    [InlineData("HP-GOV1", "dirt", FindingCode.RemainingLifeShort, "")]
    [InlineData("HP-IGG1", "water", FindingCode.FreeWaterAtStandstill, "")]
    [InlineData("HP-CWP2", "oil-ageing", FindingCode.RemainingLifeShort, "acid-number")]
    [InlineData("HP-CWP2", "oil-ageing", FindingCode.RemainingLifeShort, "rpvot")]
    [InlineData("HP-DTG1", "water", FindingCode.FreeWaterAtStandstill, "")]
    public void The_story_of_each_machine_is_found(string machine, string subject, FindingCode code, string measurand)
    {
        var missed = All.Value.Missed(machine, subject, code, measurand);

        missed.Count.ShouldBeLessThanOrEqualTo(Count / 50, $"seeds {string.Join(", ", missed)}");
    }

    /// <summary>
    /// Nominal 10 % on each side. A redraw without a forecast (a wild reading or a step seen in the few readings since the treatment) counts as
    /// neither, and is rare.
    /// </summary>
    [Theory]
    [InlineData("HP-TGB1", "water-content")]
    [InlineData("HP-GOV1", "particles-4um")]
    [InlineData("HP-CWP2", "acid-number")]
    [InlineData("HP-CWP2", "rpvot")]
    public void The_true_date_seldom_lies_before_P10_or_after_P90(string machine, string measurand)
    {
        var truth = Truth.Read(Path.Combine(Data, "truth.json"));
        var at = measurand switch
        {
            "water-content" => truth.WaterAlarmAt,
            "particles-4um" => truth.GovernorAlarmAt,
            "acid-number" => truth.PumpAcidAlarmAt,
            _ => truth.PumpRpvotAlarmAt,
        };
        var chances = All.Value.ChancesAt(machine, measurand, at);

        chances.Count.ShouldBeGreaterThanOrEqualTo(Count * 97 / 100);

        // Nominal is one in ten; two standard errors of a count are 2 sqrt(0.1 × 0.9 n).
        var most = Count / 10 + 2 * Math.Sqrt(0.09 * Count);
        ((double)chances.Count(chance => chance < 0.1)).ShouldBeLessThanOrEqualTo(most);
        ((double)chances.Count(chance => chance > 0.9)).ShouldBeLessThanOrEqualTo(most);
    }
}
