using System.Text.Json;
using OilCondition.Cleanliness;
using OilCondition.Purification;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Purification.Live;

/// <summary>The record of a run: figures by hand.</summary>
public class CleanupRecordTests
{
    private static CleanupRunFacts Facts(double? condensate = null, double? metered = null, double error = 0.1) =>
        new(
            "HP-TGB1 (invented)",
            LiveRuns.Loop,
            LiveRuns.Oil870,
            LiveRuns.Ppm(900),
            metered is { } litres ? Volume.FromLiters(litres) : null,
            condensate is { } collected ? Volume.FromLiters(collected) : null,
            Ratio.FromDecimalFractions(error)
        );

    private static CleanupStatus Status(double hours = 30, double target = 100) =>
        CleanupMonitor.Of(LiveRuns.Warm(target), LiveRuns.WholeRun(hours)).Status();

    /// <summary>30 h at 1200 L/h: 36 000 L, 18 turnovers. 1740 kg (900 − 60.6 mg/kg) = 1.461 kg of water, 1.463 L at 998.2 kg/m³.</summary>
    [Fact]
    public void Figures_by_hand()
    {
        var record = CleanupRecord.Of(Status(), Facts());

        record.Start.ShouldBe(Invented.Start);
        record.End.ShouldBe(Runs.At(30));
        record.Length.Hours.ShouldBe(30, 1e-9);
        record.VolumePassed.Liters.ShouldBe(36_000, 1e-6);
        record.Turnovers.ShouldBe(18, 1e-9);
        record.WaterRemoved.Estimate.Liters.ShouldBe(1.463, 0.002);
        record.WaterRemoved.Lower.Liters.ShouldBeLessThan(record.WaterRemoved.Upper.Liters);
        record.Verdict.ShouldBe(CleanupVerdict.TargetMet);
        record.ReboundCheckDue.ShouldBe(Runs.At(54));
        record.Status.LowestTemperature.DegreesCelsius.ShouldBe(20, 1e-9);
        record.Status.HighestTemperature.DegreesCelsius.ShouldBe(50, 1e-9);
    }

    [Theory]
    [InlineData(null, CondensateAgreement.NotMeasured)]
    [InlineData(1.40, CondensateAgreement.Agrees)]
    [InlineData(1.60, CondensateAgreement.Agrees)]
    [InlineData(1.30, CondensateAgreement.LessCollected)]
    [InlineData(1.65, CondensateAgreement.MoreCollected)]
    public void Condensate_beside_the_balance(double? litres, CondensateAgreement expected) =>
        CleanupRecord.Of(Status(), Facts(litres)).Condensate.ShouldBe(expected);

    [Fact]
    public void Without_a_curve_there_is_no_balance_to_compare_with() =>
        CleanupRecord.Of(Status(5), Facts(1.4)).Condensate.ShouldBe(CondensateAgreement.NotDetermined);

    [Fact]
    public void A_meter_goes_before_flow_times_duration()
    {
        var record = CleanupRecord.Of(Status(), Facts(metered: 30_000));

        record.IsVolumeMetered.ShouldBeTrue();
        record.Turnovers.ShouldBe(15, 1e-9);
    }

    [Theory]
    [InlineData(5, 100, CleanupVerdict.NotReached)]
    [InlineData(17, 100, CleanupVerdict.HoldNotCompleted)]
    [InlineData(30, 50, CleanupVerdict.Stalled)]
    public void Verdicts(double hours, double target, CleanupVerdict expected)
    {
        var record = CleanupRecord.Of(Status(hours, target), Facts());

        record.Verdict.ShouldBe(expected);
        record.HasReboundCheck.ShouldBeFalse();
    }

    [Fact]
    public void A_rebound_is_the_verdict()
    {
        var monitor = CleanupMonitor.Of(LiveRuns.Warm(), LiveRuns.WholeRun());
        monitor.Take(LiveRuns.Sensor(31, 140));

        CleanupRecord.Of(monitor.Status(), Facts()).Verdict.ShouldBe(CleanupVerdict.Rebounded);
    }

    [Fact]
    public void Codes_before_and_after()
    {
        var monitor = CleanupMonitor.Of(LiveRuns.Warm(), LiveRuns.WholeRun());
        monitor.Take(CleanupReading.OfParticles(Runs.At(29), Levels("16/14/11")));
        monitor.Take(CleanupReading.OfParticles(Runs.At(0), Levels("21/19/16")));

        var record = CleanupRecord.Of(monitor.Status(), Facts());

        record.CodeBefore.ToString().ShouldBe("21/19/16");
        record.CodeAfter.ToString().ShouldBe("16/14/11");
    }

    [Fact]
    public void The_json_carries_the_same_facts()
    {
        var diagnosis = StallDiagnosis.Of(
            Status(30, 50).Curve,
            LiveRuns.Ppm(50),
            LiveRuns.Planned(0.5),
            new RunConditions(LiveRuns.Celsius(50), LiveRuns.Celsius(50), LiveRuns.Ppm(20), LiveRuns.Ppm(20))
        );
        using var json = JsonDocument.Parse(CleanupRecord.Of(Status(30, 50), Facts(1.4), diagnosis).ToJson());

        var root = json.RootElement;
        root.GetProperty("machine").GetString().ShouldBe("HP-TGB1 (invented)");
        root.GetProperty("verdict").GetString().ShouldBe("stalled");
        root.GetProperty("start").GetString().ShouldBe("2025-01-06T08:00:00+00:00");
        root.GetProperty("turnovers").GetDouble().ShouldBe(18, 1e-9);
        root.GetProperty("water").GetProperty("condensate").GetString().ShouldBe("agrees");
        root.GetProperty("water")
            .GetProperty("removedByBalanceLitres")
            .GetProperty("estimate")
            .GetDouble()
            .ShouldBe(1.463, 0.002);
        root.GetProperty("diagnosis")
            .GetProperty("causes")[0]
            .GetProperty("cause")
            .GetString()
            .ShouldBe("water-ingress");
        root.GetProperty("holding").TryGetProperty("metAt", out _).ShouldBeFalse();
        root.GetProperty("cautions").EnumerateArray().Select(one => one.GetString()).ShouldContain("hot-oil");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(12)]
    [InlineData(30)]
    public void Json_and_text_can_be_made_at_every_hour(double hours)
    {
        var record = CleanupRecord.Of(Status(hours), Facts());

        Should.NotThrow(() => JsonDocument.Parse(record.ToJson()).Dispose());
        record.ToText().ShouldContain("HP-TGB1 (invented)");
        record.ToText().ShouldNotContain("NaN");
    }

    [Fact]
    public void The_text_is_for_people()
    {
        var text = CleanupRecord.Of(Status(), Facts(1.4)).ToText();

        text.ShouldContain("target met and held");
        text.ShouldContain("36000 L, 18 turnovers (flow times duration)");
        text.ShouldContain("1.4 L: agrees with the balance");
        text.ShouldContain("Rebound check due     2025-01-08 14:00 +00:00");
    }

    private static ParticleLevels Levels(string code) => ParticleLevels.FromCode(CleanlinessCode.Parse(code));
}
