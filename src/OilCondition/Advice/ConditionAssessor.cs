using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Prognosis;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>From a machine's records and a limit set to problems, alerts and recommendations. A pure function.</summary>
/// <example>
/// <code>
/// var assessment = ConditionAssessor.Assess(history, limits, new AssessmentOptions(asOf));
/// foreach (var alert in assessment.Alerts)
/// {
///     Console.WriteLine($"{alert.Key}: {alert.Problem}");
/// }
/// </code>
/// </example>
public static class ConditionAssessor
{
    /// <summary>Assesses the oil charge that is in a machine.</summary>
    /// <remarks>
    /// A sample or sensor reading that is dated more than a day after now is a wrong date, and is told as that. To look back as if from an earlier
    /// day give <see cref="OilHistory.Until"/> that day. A machine without any record is a result as well: it was never sampled.
    /// </remarks>
    /// <param name="history">The machine's records up to now.</param>
    /// <param name="limits">The limits.</param>
    /// <param name="options">Now, planning horizon, confidence.</param>
    /// <returns>The assessment.</returns>
    public static ConditionAssessment Assess(OilHistory history, LimitSet limits, AssessmentOptions options)
    {
        Guard.NotNull(history);
        Guard.NotNull(limits);
        Guard.NotNull(options);
        var known = history.JudgedAt(options.AsOf);
        var records = new ChargeRecords(known, options.AsOf);
        var states = MeasurandStates.Of(records, limits, options);
        RemainingLife[] lives = [.. states.SelectMany(state => state.Lives)];
        var water = Water(records);
        var cleanup = Cleanup(records, options);
        var findings = new FindingList(records, states, options)
            .Of(water, cleanup)
            .OrderByDescending(finding => finding.Severity)
            .ThenBy(finding => finding.Code)
            .ToList();
        var problems = Problem.Of(findings);
        return new ConditionAssessment(
            known,
            records.Charge,
            limits,
            options,
            states,
            lives,
            water,
            Code(records),
            cleanup,
            Next(records, states, lives, findings, options),
            findings,
            problems,
            Advisor.Recommend(records, problems, water)
        );
    }

    private static WaterInOil Water(ChargeRecords records)
    {
        var machine = records.History.Machine;
        if (records.Latest(Measurands.WaterContent) is not { } point)
        {
            return new WaterInOil.NoWaterReading();
        }

        if (machine.Oil.SaturationCurve is not { } curve)
        {
            return new WaterInOil.NoSaturationCurve();
        }

        var total = MassFraction.FromPartsPerMillion(point.Reading.Value);
        var standstill = curve.Split(total, machine.StandstillTemperature);
        var hasDensity = machine.Oil.NewReadings.TryGetValue(Measurands.Density15, out var density);

        // Litres of water: content times the mass of the charge, a kilogram of water being a litre to within half a percent.
        Volume? free = hasDensity
            ? Volume.FromLiters(standstill.Free.DecimalFractions * machine.ChargeVolume.CubicMeters * density.Value)
            : null;
        return new WaterInOil.Split(
            point,
            curve,
            curve.Split(total, machine.RunningTemperature),
            standstill,
            curve.SeparationPoint(total),
            free
        );
    }

    private static CleanlinessCode? Code(ChargeRecords records)
    {
        var sample = records.Latest(static one =>
            one.Readings.ContainsKey(Measurands.Particles4)
            && one.Readings.ContainsKey(Measurands.Particles6)
            && one.Readings.ContainsKey(Measurands.Particles14)
        );
        if (sample is null)
        {
            return null;
        }

        double Count(Measurand size) => sample.Readings[size].Value;
        var (at4, at6, at14) = (
            Count(Measurands.Particles4),
            Count(Measurands.Particles6),
            Count(Measurands.Particles14)
        );
        return at4 >= at6 && at6 >= at14 ? CleanlinessCode.FromCounts(at4, at6, at14) : null;
    }

    private static CleanupProgress? Cleanup(ChargeRecords records, AssessmentOptions options) =>
        records.RunUnderWay is { } run
            ? new CleanupProgress(
                run,
                CleanupMonitor.Of(records.History, run, records.AsOf).Status(options.Confidence),
                records.AsOf
            )
            : null;

    private static NextSample? Next(
        ChargeRecords records,
        IReadOnlyList<MeasurandState> states,
        IReadOnlyList<RemainingLife> lives,
        IReadOnlyList<Finding> findings,
        AssessmentOptions options
    )
    {
        if (records.RunUnderWay is not null)
        {
            return null;
        }

        if (records.History.Samples.Count == 0)
        {
            return records.History.SensorReadings.Count == 0
                ? NextSample.First(records.Charge.IsDated ? records.Charge.Since : null, options.Sampling, options.AsOf)
                : null;
        }

        NextSample Confirming(NextSampleReason reason) =>
            NextSample.ToConfirm(reason, records.LatestSampleAt, options.Sampling, options.AsOf);
        // Water that a standstill frees is past what the oil bears, as a limit that is passed.
        if (findings.Any(finding => finding.Severity == Severity.Alarm || finding is FreeWaterFinding))
        {
            return Confirming(NextSampleReason.LimitCrossed);
        }

        if (
            findings.Any(finding => finding is SuddenChangeFinding)
            || states.Any(state => state.Trend.Assessment.LatestIsWild)
        )
        {
            return Confirming(NextSampleReason.SuddenChange);
        }

        // Who is told to take another sample before acting is not told to take it in half a year.
        return findings.Any(finding => finding is LimitFinding { IsOfOneReading: true })
                ? Confirming(NextSampleReason.LimitCrossed)
            : findings.Any(finding => finding is RecordFinding { IsLatestInDoubt: true })
                ? Confirming(NextSampleReason.SampleInDoubt)
            : NextSample.After(lives, records.LatestSampleAt, options.Sampling, options.AsOf);
    }
}
