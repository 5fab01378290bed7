using OilCondition.Cleanliness;
using OilCondition.Guards;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Purification;
using OilCondition.Sampling;
using UnitsNet;

namespace OilCondition.Advice;

/// <summary>From a machine's records and a limit set to findings, alerts and recommendations. A pure function.</summary>
/// <example>
/// <code>
/// var assessment = ConditionAssessor.Assess(history, limits, new AssessmentOptions(asOf));
/// foreach (var alert in assessment.Alerts)
/// {
///     Console.WriteLine($"{alert.Key}: {Sentences.Of(alert.Findings[0])}");
/// }
/// </code>
/// </example>
public static class ConditionAssessor
{
    /// <summary>Assesses the oil charge that is in a machine.</summary>
    /// <param name="history">The machine's records; later ones than now are not looked at.</param>
    /// <param name="limits">The limits.</param>
    /// <param name="options">Now, planning horizon, confidence.</param>
    /// <returns>The assessment.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Nothing is recorded up to now.</exception>
    public static ConditionAssessment Assess(OilHistory history, LimitSet limits, AssessmentOptions options)
    {
        Guard.NotNull(history, nameof(history));
        Guard.NotNull(limits, nameof(limits));
        Guard.NotNull(options, nameof(options));
        var records = new ChargeRecords(history, options.AsOf);
        var states = limits.Limits.Select(limit => State(records, limit, options)).ToList();
        var water = Water(records);
        var cleanup = Cleanup(records, options);
        var findings = Findings(records, states, water, cleanup, options)
            .OrderByDescending(finding => finding.Severity)
            .ThenBy(finding => finding.Code)
            .ToList();
        return new ConditionAssessment(
            history,
            records.Charge,
            limits,
            options,
            states,
            water,
            Code(records),
            cleanup,
            findings,
            Advisor.Recommend(records, findings, water)
        );
    }

    private static MeasurandState State(ChargeRecords records, Limit limit, AssessmentOptions options)
    {
        var oil = records.History.Machine.Oil;
        var readings = records.Readings(limit.Measurand);
        var evaluation = limit.Evaluate(oil, readings);
        var trend = records.Trend(limit.Measurand);
        var life = new List<RemainingLife>();
        if (limit.TryResolve(oil, out var absolute) && !records.IsBeingTreated(limit.Measurand))
        {
            var series = trend.Series;
            if (options.Axis == TimeAxis.OilHours && series.TryOnOilHours(out var onOilHours))
            {
                series = onOilHours!;
            }

            AddLife(life, series, absolute!.Upper, LimitSide.Upper, records.AsOf);
            AddLife(life, series, absolute.Lower, LimitSide.Lower, records.AsOf);
        }

        var latest = readings.Points.Count > 0 ? readings.Points[readings.Points.Count - 1] : null;
        return new MeasurandState(evaluation, latest, trend, life);
    }

    private static void AddLife(
        List<RemainingLife> life,
        MeasurandSeries series,
        LimitBand? band,
        LimitSide side,
        DateTimeOffset asOf
    )
    {
        if (band is not null)
        {
            life.Add(LifeForecast.Of(series, band.Alarm ?? band.Alert!.Value, side, asOf));
        }
    }

    private static WaterBalance Water(ChargeRecords records)
    {
        var machine = records.History.Machine;
        if (records.Latest(Measurands.WaterContent) is not { } point)
        {
            return new WaterBalance.NoWaterReading();
        }

        if (machine.Oil.SaturationCurve is not { } curve)
        {
            return new WaterBalance.NoSaturationCurve();
        }

        var total = MassFraction.FromPartsPerMillion(point.Reading.Value);
        var standstill = curve.Split(total, machine.StandstillTemperature);
        var hasDensity = machine.Oil.NewReadings.TryGetValue(Measurands.Density15, out var density);

        // Litres of water: content times the mass of the charge, a kilogram of water being a litre to within half a percent.
        Volume? free = hasDensity
            ? Volume.FromLiters(standstill.Free.DecimalFractions * machine.ChargeVolume.CubicMeters * density.Value)
            : null;
        return new WaterBalance.Split(
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
        var sample = records
            .History.Samples.Where(one => one.TakenAt >= records.Charge.Since && one.TakenAt <= records.AsOf)
            .LastOrDefault(one =>
                !records.History.IsSuspect(one)
                && one.Readings.ContainsKey(Measurands.Particles4)
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

    private static CleanupProgress? Cleanup(ChargeRecords records, AssessmentOptions options)
    {
        if (records.RunUnderWay is not { } run)
        {
            return null;
        }

        var points = records
            .SensorPoints(run.Measurand, run.At)
            .Concat(records.History.SampleSeries(run.Measurand, run.At, records.AsOf).Points)
            .OrderBy(point => point.At)
            .ToList();

        var readings = points.ConvertAll(point => point.Reading);
        var curve = CleanupCurve.Fit(
            points.ConvertAll(point => point.At),
            readings,
            CleanupOptions.UsualFor(run.Measurand.Scale, readings)
        );
        return new CleanupProgress(run, curve, curve.TimeTo(run.Target, options.Confidence), points);
    }

    private static IEnumerable<Finding> Findings(
        ChargeRecords records,
        List<MeasurandState> states,
        WaterBalance water,
        CleanupProgress? cleanup,
        AssessmentOptions options
    )
    {
        var horizon = options.AsOf.AddDays(options.PlanningHorizon.Days);
        foreach (var state in states)
        {
            var isBeyond = state.Evaluation.State >= LimitState.Alert || state.Evaluation.Pending >= LimitState.Alert;
            if (isBeyond && state.Latest is { } point)
            {
                yield return new LimitFinding(state.Evaluation, point);
            }

            var soon = state
                .Life.OfType<RemainingLife.Crosses>()
                .Where(life => life.P10.At <= horizon && life.Trend.SlopePValue <= options.TrendSignificance)
                .OrderBy(life => life.P10.At)
                .FirstOrDefault();
            if (soon is not null)
            {
                yield return new RemainingLifeFinding(soon, records.FollowsTreatment(state.Measurand));
            }
        }

        if (water is WaterBalance.Split { Standstill.HasFreeWater: true } split)
        {
            yield return new FreeWaterFinding(split);
        }

        if (cleanup is not null)
        {
            yield return new CleanupFinding(cleanup);
        }

        foreach (
            var issue in records.History.Issues.Where(one => one.At >= records.Charge.Since && one.At <= options.AsOf)
        )
        {
            var measurand = issue
                .Readings.Keys.OrderByDescending(key => key.TellsOilIdentity)
                .ThenBy(key => key.Id, StringComparer.Ordinal)
                .FirstOrDefault();
            yield return new RecordFinding(issue, measurand ?? Measurands.WaterContent);
        }
    }
}
