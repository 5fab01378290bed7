using HarrowPoint.Generator;
using OilCondition;
using OilCondition.Prognosis;

namespace HarrowPoint;

/// <summary>Holds what the library said against the truth that the generator used.</summary>
public static class TruthReport
{
    public static void Write(
        TextWriter to,
        Truth truth,
        StationRecords station,
        IReadOnlyList<ConditionAssessment> assessments
    )
    {
        ConditionAssessment Of(string id) => assessments.Single(one => one.History.Machine.Id == id);
        to.WriteLine();
        to.WriteLine(
            "== How close the library came to the truth of the generator (an 80 % interval misses one truth in five)"
        );
        Crossing(to, "water of HP-TGB1 reaches 500 mg/kg", Of("HP-TGB1"), Measurands.WaterContent, truth.WaterAlarmAt);
        Crossing(
            to,
            "particles >= 4 um(c) of HP-GOV1 pass code 18",
            Of("HP-GOV1"),
            Measurands.Particles4,
            truth.GovernorAlarmAt
        );
        Crossing(
            to,
            "acid number of HP-CWP2 reaches +0.3",
            Of("HP-CWP2"),
            Measurands.AcidNumber,
            truth.PumpAcidAlarmAt
        );
        Crossing(to, "RPVOT of HP-CWP2 reaches 25 % of new", Of("HP-CWP2"), Measurands.Rpvot, truth.PumpRpvotAlarmAt);
        Cleanup(to, "HP-DTG1 at hour 36, under way", Of("HP-DTG1").Cleanup, truth.GateUnitCleanup);
        Replay(to, station, truth.GuideBearingCleanup, 30);
        Replay(to, station, truth.GuideBearingCleanup, 59);
        var suspect = assessments
            .SelectMany(one => one.Findings)
            .Where(finding => finding.Code == FindingCode.SuspectSample)
            .Select(finding => finding.Evidence.Single(item => item.Name == "from").Text.Replace("sample ", ""))
            .Order();
        to.WriteLine(
            $"   Swapped samples: true {string.Join(", ", truth.SwappedSamples.Order())}; found {string.Join(", ", suspect)}"
        );
        to.WriteLine($"   Bad cells: true {truth.BadCells}; reported {station.Problems.Count}");
        to.WriteLine($"   Healthy HP-TGB2: {Of("HP-TGB2").Alerts.Count} alerts (true: 0)");
    }

    private static void Crossing(
        TextWriter to,
        string what,
        ConditionAssessment assessment,
        Measurand measurand,
        DateTimeOffset truth
    )
    {
        var life = assessment
            .States.Where(state => state.Measurand.Equals(measurand))
            .SelectMany(state => state.Lives)
            .OfType<RemainingLife.Crosses>()
            .FirstOrDefault();
        to.WriteLine(
            life is null
                ? $"   {what}: true {truth:yyyy-MM-dd}; no forecast"
                : $"   {what}: true {truth:yyyy-MM-dd}; 10/50/90 % {life.P10:yyyy-MM-dd} / {life.P50:yyyy-MM-dd} / {life.P90:yyyy-MM-dd}; true date {(truth >= life.P10 && truth <= life.P90 ? "inside" : "OUTSIDE")}"
        );
    }

    /// <summary>What would have been said during the finished run, from what was known at that hour.</summary>
    private static void Replay(TextWriter to, StationRecords station, CleanupTruth truth, int hour)
    {
        var (history, limits) = station.Machines.Single(one => one.History.Machine.Id == "HP-TGB1");
        var assessment = ConditionAssessor.Assess(
            history.Until(truth.StartedAt.AddHours(hour)),
            limits,
            new AssessmentOptions(truth.StartedAt.AddHours(hour))
        );
        Cleanup(to, $"HP-TGB1 replayed at hour {hour}", assessment.Cleanup, truth);
    }

    private static void Cleanup(TextWriter to, string what, CleanupProgress? progress, CleanupTruth truth)
    {
        if (progress is null)
        {
            to.WriteLine($"   Cleanup of {what}: none found");
            return;
        }

        var curve = progress.Status.Curve;
        to.WriteLine(
            $"   Cleanup of {what}: rate {curve.RatePerHour:0.0000} per h (true {truth.RatePerHour:0.0000}), floor {curve.Floor:0} mg/kg (true {truth.FloorMgPerKg:0})"
        );
        to.WriteLine(
            $"      target: true {truth.TargetAt:yyyy-MM-dd HH:mm}; by the curve {progress.Status.CurveArrival}; held {progress.Status.Arrival}"
        );
    }
}
