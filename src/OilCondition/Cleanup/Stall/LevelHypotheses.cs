using OilCondition.Statistics;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What can hold a content above where it should level off, each with the level and the rate that it would give.</summary>
/// <remarks>
/// The excess E is the observed level L less the planned one. Gauges that read other than planned explain their parts of it: level as planned, then with
/// the vacuum as read, then with the oil as warm as read, then with sweep air as read, then with the flow as read or as a rate that is clearly low tells it.
/// What is left, R, has one more cause, if it is more than twice its uncertainty (and may have one, if no gauge reads other than planned, from half of it on), u² = u_L² + (0.07 L)² + (2 mg/kg)².
/// Where the tank is colder beside the chamber than planned, by more than two thermometers differ, and has been turned over twice at that temperature, a thermometer is one of the causes
/// at whatever level. Each cause is asked for the level and the rate that it gives, and scored by
/// Σ ((observed − given)/u)² over level, logarithm of the rate and condensate, with 3 more for a figure that is free to fit any level
/// (the breadth of what it could explain, in the manner of Schwarz) and 2 more for an instrument that is wrong, which is rarer. Within
/// 6 of the best, odds of twenty to one, a cause is not told from it. The 7 %, the 2 mg/kg, a quarter for rates, 0.3 for condensate, a half, 2, 3 and 6, and 5 K for a thermometer, are ours.
/// </remarks>
internal sealed class LevelHypotheses
{
    private const double LevelError = 0.07;

    /// <summary>No sensor and no titration is better, mg/kg.</summary>
    private const double LeastErrorPpm = 2;

    private const double RateError = 0.25;

    /// <summary>What the unit takes out, where the readings give its rate.</summary>
    private const double ObservedError = 0.05;

    /// <summary>The same by plan.</summary>
    private const double RemovalError = 0.1;

    private const double CondensateError = 0.3;
    private const double FreeFigure = 3;
    private const double RarerFault = 2;
    private const double ToldApart = 6;
    private const double TooFar = 16;
    private const double LeastShare = 0.05;
    private const double ClearlyApart = 2;

    /// <summary>From here on the level may be more than the plan's; below it readings and plan agree.</summary>
    private const double PerhapsApart = 0.5;

    private static readonly StallCheck[] PlannedChecks = [StallCheck.ChamberPressure, StallCheck.SweepAir];

    /// <summary>What thermometers in tank and chamber may differ by.</summary>
    private const double ThermometerKelvins = 5;

    /// <summary>After two turnovers of the tank its temperature lags behind the chamber by e⁻² of what it did.</summary>
    private const double SettledTurnovers = 2;

    /// <summary>Condensate below it is none, g/h.</summary>
    private const double Trace = 0.5;

    private readonly ObservedLevel observed;
    private readonly PlannedPerformance planned;
    private readonly RunConditions conditions;
    private readonly double risePlanned;
    private readonly List<Scored> alternatives = [];

    /// <summary>Oil behind a heater is no colder than the tank; null where the tank's temperature is not known.</summary>
    private readonly TankReading? tank;

    /// <summary>The state as its gauges read it, with the flow that the observed rate tells.</summary>
    private readonly UnitState state;

    public LevelHypotheses(
        CleanupCurve curve,
        double levelPpm,
        PlannedPerformance planned,
        RunConditions conditions,
        double confidence,
        TankReading? tank
    )
    {
        observed = ObservedLevel.Of(curve, levelPpm, confidence);
        this.planned = planned;
        this.conditions = conditions;
        this.tank = tank;
        risePlanned = planned.RisePerHour(planned.WaterIngress);
        PlannedPpm =
            (conditions.Physics is { } physics ? physics.Level(physics.Planned, risePlanned) : null)
            ?? planned.Level.PartsPerMillion;
        var usual = RateOf(conditions.State);
        var isSlow = observed.RatePerHour is { } rate && Math.Log(usual / rate) > 2 * RateUncertainty;
        state =
            isSlow && conditions.OilFlow is null
                ? conditions.State with
                {
                    FlowShare = observed.RatePerHour!.Value / usual,
                }
                : conditions.State;
        WaterIngress = Ingress(curve, confidence);

        var (parts, now) = AsRead();
        var excess = Math.Max(1e-9, observed.Ppm - PlannedPpm);
        var left = observed.Ppm - now;
        List<StallDiagnosis.Cause> causes = [.. parts.Select(part => part.Of(part.Ppm / excess))];
        IsTold = true;
        var isClear = Math.Abs(left) > ClearlyApart * Uncertainty;
        var isHigher = parts.Count == 0 && left > PerhapsApart * Uncertainty;
        if (isClear || isHigher || ThermometersContradict)
        {
            if (isClear || isHigher)
            {
                if (left > 0)
                {
                    TooHigh();
                }
                else
                {
                    TooLow();
                }
            }

            if (ThermometersContradict)
            {
                AsWarmAsTheTank();
            }

            if (!isClear)
            {
                // It may be nothing at all, and it may be any of them.
                alternatives.Add(
                    new Scored(
                        StallCauseKind.VacuumOrSweepAir,
                        Square(left / Uncertainty),
                        Planned(),
                        PlannedChecks,
                        StallCheck.ChamberPressure
                    )
                );
            }

            var best = alternatives.Count == 0 ? 0 : alternatives.Min(one => one.Score);
            Scored[] fit = [.. alternatives.Where(one => one.Score <= best + ToldApart).OrderBy(one => one.Score)];
            causes.AddRange(fit.Select(one => one.Of(Math.Abs(left) / excess)));
            IsTold = fit.Length == 1;
            Telling =
                IsTold ? []
                : fit.Length == 0
                    ?
                    [
                        StallCheck.ChamberPressure,
                        StallCheck.OilTemperature,
                        StallCheck.SweepAir,
                        StallCheck.Condensate,
                    ]
                : [.. fit.Select(one => one.Tells).Distinct()];
            Alternatives = IsTold ? [] : [.. fit.Select(one => one.Kind)];
        }

        // Those that are told apart by nothing have one share, and keep the order of their scores.
        Causes = [.. causes.Where(one => one.Share.DecimalFractions >= LeastShare).OrderByDescending(one => one.Share)];
        if (Causes.Count == 0 && IsTold)
        {
            Causes = [AsPlanned()];
        }
    }

    /// <summary>The causes: by share, those that fit alike by their scores.</summary>
    public IReadOnlyList<StallDiagnosis.Cause> Causes { get; }

    /// <summary>Which of them fit alike.</summary>
    public IReadOnlyList<StallCauseKind> Alternatives { get; } = [];

    public bool IsTold { get; }

    /// <summary>What would tell them apart.</summary>
    public IReadOnlyList<StallCheck> Telling { get; } = [];

    /// <summary>Where the plan levels off.</summary>
    public double PlannedPpm { get; }

    /// <summary>Water that comes in, if that is what holds the level.</summary>
    public CleanupFigure<MassFlow> WaterIngress { get; }

    private static EvidenceItem Ppm(string id, double ppm) => EvidenceItem.Number(id, ppm, "mg/kg");

    public StallCauses ToCauses() => new(Causes, IsTold && Causes.Count > 0, Alternatives, Telling, WaterIngress);

    private double Uncertainty =>
        Math.Sqrt(Square(observed.UncertaintyPpm) + Square(LevelError * observed.Ppm) + Square(LeastErrorPpm));

    private double RateUncertainty =>
        Math.Sqrt(RateError * RateError + observed.LogRateUncertainty * observed.LogRateUncertainty);

    private static double Square(double value) => value * value;

    /// <summary>Where a state levels off with the planned ingress; where nothing evaporates any content stays, this one as well.</summary>
    private double LevelOf(UnitState which) => conditions.Physics!.Level(which, risePlanned) ?? double.MaxValue;

    private double RateOf(UnitState which) =>
        conditions.Physics is { } physics
            ? physics.RatePerHour(which, observed.Ppm, (observed.Ppm + observed.StartPpm) / 2)
            : planned.RatePerHour * (which.FlowShare > 0 ? which.FlowShare : 1);

    /// <summary>What the unit takes out at the observed level, as it runs; by the observed rate where the readings bound it.</summary>
    private CleanupFigure<MassFlow> Ingress(CleanupCurve curve, double confidence)
    {
        var floor = Math.Min(observed.Ppm, conditions.Floor.PartsPerMillion);
        var usual = Math.Max(1e-12, RateOf(conditions.State));
        var taken = conditions.Physics is { } physics
            ? physics.RemovedPerHour(conditions.State, observed.Ppm)
            : usual * (observed.Ppm - floor);
        var grams = planned.OilKilograms / 1000;
        var (low, estimate, high) = (taken, taken, taken);
        var error = RemovalError;
        if (observed.RatePerHour is { } rate)
        {
            // Sweep air bends what is taken out over the content: the profile of k (L - p) is scaled to it.
            var bend = taken / Math.Max(1e-12, usual * (observed.Ppm - floor));
            var profile = LoopPerformance.Ingress(curve, floor, perHour => perHour, confidence, IntervalSide.Both);
            estimate = rate * (observed.Ppm - floor) * bend;
            (low, high) = ((profile.Lower ?? 0) * bend, (profile.Upper ?? double.NaN) * bend);
            error = ObservedError;
        }
        else
        {
            var apart = 1.645 * observed.UncertaintyPpm / Math.Max(1, observed.Ppm - floor) * taken;
            (low, high) = (taken - apart, taken + apart);
        }

        double End(double end, double sign) =>
            estimate + sign * Math.Sqrt(Square(end - estimate) + Square(1.645 * error * estimate));
        return new CleanupFigure<MassFlow>(
            high > 0 ? CleanupFigureOutcome.Bounded : CleanupFigureOutcome.NoUpperEnd,
            CleanupFigureMethod.Profile,
            Flow(estimate),
            Flow(End(low, -1)),
            high > 0 ? Flow(End(high, 1)) : null,
            confidence,
            curve.CoverageInDoubt,
            isExtrapolated: false
        );

        MassFlow Flow(double perHour) => MassFlow.FromGramsPerHour(Math.Max(0, perHour) * grams);
    }

    private StallDiagnosis.Cause AsPlanned() => new(StallCauseKind.VacuumOrSweepAir, 1, Planned(), PlannedChecks);

    private IReadOnlyList<EvidenceItem> Planned() =>
        [Ppm("observed-level", observed.Ppm), Ppm("planned-level", PlannedPpm)];

    /// <summary>What each gauge that reads other than planned adds to the level, and the level with all of them.</summary>
    private (IReadOnlyList<Part> Parts, double Now) AsRead()
    {
        List<Part> parts = [];
        var last = PlannedPpm;
        void Step(StallCauseKind kind, double level, IReadOnlyList<EvidenceItem> evidence, StallCheck[] checks)
        {
            var next = level == double.MaxValue ? Math.Max(last, observed.Ppm) : level;
            if (next > last)
            {
                parts.Add(
                    new Part(
                        kind,
                        next - last,
                        [Ppm("observed-level", observed.Ppm), Ppm("level-that-this-gives", next), .. evidence],
                        checks
                    )
                );
            }

            last = next;
        }

        IReadOnlyList<EvidenceItem> Rates() =>
            observed.RatePerHour is { } rate
                ?
                [
                    EvidenceItem.Number("observed-rate", rate, "1/h"),
                    EvidenceItem.Number("rate-as-planned", RateOf(conditions.State), "1/h"),
                ]
                : [EvidenceItem.Number("part-of-the-planned-oil-flow", 100 * state.FlowShare, "%")];
        if (conditions.Physics is { } physics)
        {
            var at = physics.Planned with { Pascal = state.Pascal };
            Step(
                StallCauseKind.PoorVacuum,
                LevelOf(at),
                [
                    EvidenceItem.Number("chamber-pressure", state.Pascal / 100, "hPa"),
                    EvidenceItem.Number("planned-chamber-pressure", physics.Planned.Pascal / 100, "hPa"),
                ],
                [StallCheck.ChamberPressure]
            );
            at = at with { Celsius = state.Celsius };
            Step(
                StallCauseKind.OilTooCold,
                LevelOf(at),
                Temperatures(),
                [StallCheck.Heater, StallCheck.OilTemperature, StallCheck.OilFlow]
            );
            at = at with { SweepShare = state.SweepShare };
            Step(
                StallCauseKind.SweepAirMissing,
                LevelOf(at),
                [EvidenceItem.Number("part-of-the-planned-sweep-air", 100 * state.SweepShare, "%")],
                [StallCheck.SweepAir]
            );
            Step(
                StallCauseKind.BypassOrShortCircuit,
                LevelOf(state),
                Rates(),
                [StallCheck.BypassValves, StallCheck.SuctionAndReturn, StallCheck.OilFlow]
            );
            return (parts, last);
        }

        var lift = risePlanned / planned.RatePerHour;
        var warm = Math.Min(conditions.FloorWhenWarm.PartsPerMillion, conditions.Floor.PartsPerMillion);
        Step(
            StallCauseKind.PoorVacuum,
            warm + lift,
            [Ppm("physical-floor-with-warm-oil", warm)],
            [StallCheck.ChamberPressure, StallCheck.SweepAir]
        );
        Step(
            StallCauseKind.OilTooCold,
            conditions.Floor.PartsPerMillion + lift,
            Temperatures(),
            [StallCheck.Heater, StallCheck.OilTemperature, StallCheck.OilFlow]
        );
        Step(
            StallCauseKind.BypassOrShortCircuit,
            conditions.Floor.PartsPerMillion + risePlanned / RateOf(state),
            Rates(),
            [StallCheck.BypassValves, StallCheck.SuctionAndReturn, StallCheck.OilFlow]
        );
        return (parts, last);
    }

    private IReadOnlyList<EvidenceItem> Temperatures() =>
        [
            EvidenceItem.Number("process-temperature", conditions.ProcessTemperature.DegreesCelsius, "°C"),
            EvidenceItem.Number("planned-process-temperature", conditions.WorkingTemperature.DegreesCelsius, "°C"),
        ];

    /// <summary>The level lies above what the gauges allow: one more thing is amiss.</summary>
    private void TooHigh()
    {
        var physics = conditions.Physics;
        if (physics is { HasSweep: true } && conditions.SweepAir is null)
        {
            var shut = state with { SweepShare = 0 };
            var level = LevelOf(shut);
            var given = level == double.MaxValue ? observed.Ppm : level;
            Add(
                StallCauseKind.SweepAirMissing,
                Square((observed.Ppm - given) / Uncertainty) + Misfit(shut),
                [Ppm("level-without-sweep-air", given)],
                [StallCheck.SweepAir],
                StallCheck.SweepAir
            );
        }

        List<EvidenceItem> water =
        [
            Ppm("physical-floor-as-it-runs", conditions.Floor.PartsPerMillion),
            .. WaterBalanceNow.EvidenceOf(WaterIngress),
            EvidenceItem.Number("planned-water-that-comes-in", planned.WaterIngress.GramsPerHour, "g/h"),
        ];
        Add(
            StallCauseKind.WaterIngress,
            FreeFigure + Misfit(state, WaterIngress.Estimate?.GramsPerHour),
            water,
            [StallCheck.WaterSources, StallCheck.StandingWater],
            StallCheck.Condensate
        );
        if (observed.RatePerHour is null && conditions.OilFlow is null && risePlanned > 0)
        {
            Add(
                StallCauseKind.BypassOrShortCircuit,
                FreeFigure + Misfit(state),
                [Ppm("physical-floor-as-it-runs", conditions.Floor.PartsPerMillion)],
                [StallCheck.BypassValves, StallCheck.SuctionAndReturn, StallCheck.OilFlow],
                StallCheck.OilFlow
            );
        }

        if (physics is not null)
        {
            PressureInstead(state.Pascal, 110_000);
            TemperatureInstead(state.Celsius, tank?.Celsius - ThermometerKelvins ?? physics.AmbientCelsius);
        }
    }

    /// <summary>The level lies below what the gauges allow: one that reads worse than planned is wrong.</summary>
    private void TooLow()
    {
        if (conditions.Physics is { } physics)
        {
            PressureInstead(physics.Planned.Pascal, state.Pascal);
            TemperatureInstead(physics.Planned.Celsius, state.Celsius);
        }
    }

    /// <summary>
    /// The tank has been pumped through the unit often enough, and is colder beside the chamber than planned by more than two thermometers can differ.
    /// </summary>
    private bool ThermometersContradict =>
        conditions is { IsTemperatureConfirmed: false, Physics: { } physics }
        && tank is { } read
        && read.SettledHours * planned.Loop.TurnoversPerHour >= SettledTurnovers
        && state.Celsius - physics.PlannedDropKelvins - read.Celsius > 2 * ThermometerKelvins;

    /// <summary>The oil in the chamber is as warm as the tank tells: no figure is free, and one thermometer is wrong for certain.</summary>
    private void AsWarmAsTheTank()
    {
        var celsius = tank!.Value.Celsius + conditions.Physics!.PlannedDropKelvins;
        var colder = state with { Celsius = celsius };
        var level = LevelOf(colder);
        Add(
            StallCauseKind.ThermometerWrong,
            Square((observed.Ppm - level) / Uncertainty) + Misfit(colder),
            [
                Ppm("level-with-oil-as-warm-as-the-tank-tells", level),
                EvidenceItem.Number("process-temperature-that-the-tank-tells", celsius, "°C"),
                EvidenceItem.Number("process-temperature-as-read", state.Celsius, "°C"),
            ],
            [StallCheck.OilTemperature],
            StallCheck.OilTemperature
        );
    }

    private void PressureInstead(double good, double bad)
    {
        if (!conditions.IsPressureConfirmed && good < bad)
        {
            Solve(
                StallCauseKind.VacuumGaugeWrong,
                good,
                bad,
                one => state with { Pascal = one },
                one => EvidenceItem.Number("chamber-pressure-that-would-fit", one / 100, "hPa"),
                EvidenceItem.Number("chamber-pressure-as-read", state.Pascal / 100, "hPa"),
                StallCheck.ChamberPressure
            );
        }
    }

    private void TemperatureInstead(double good, double bad)
    {
        if (!conditions.IsTemperatureConfirmed && good > bad && !ThermometersContradict)
        {
            Solve(
                StallCauseKind.ThermometerWrong,
                good,
                bad,
                one => state with { Celsius = one },
                one => EvidenceItem.Number("process-temperature-that-would-fit", one, "°C"),
                EvidenceItem.Number("process-temperature-as-read", state.Celsius, "°C"),
                StallCheck.OilTemperature
            );
        }
    }

    /// <summary>The reading, between a good and a bad one, at which the physics gives the observed level; nothing where there is none.</summary>
    private void Solve(
        StallCauseKind kind,
        double good,
        double bad,
        Func<double, UnitState> with,
        Func<double, EvidenceItem> evidence,
        EvidenceItem read,
        StallCheck tells
    )
    {
        if (LevelOf(with(good)) > observed.Ppm || LevelOf(with(bad)) < observed.Ppm)
        {
            return;
        }

        for (var i = 0; i < 30; i++)
        {
            var middle = (good + bad) / 2;
            (good, bad) = LevelOf(with(middle)) < observed.Ppm ? (middle, bad) : (good, middle);
        }

        Add(kind, FreeFigure + RarerFault + Misfit(with(good)), [evidence(good), read], [tells], tells);
    }

    private void Add(
        StallCauseKind kind,
        double score,
        IReadOnlyList<EvidenceItem> evidence,
        IReadOnlyList<StallCheck> checks,
        StallCheck tells
    )
    {
        if (score <= TooFar)
        {
            alternatives.Add(
                new Scored(kind, score, [Ppm("observed-level", observed.Ppm), .. evidence], checks, tells)
            );
        }
    }

    /// <summary>How far rate and condensate are from what a state would give, squared.</summary>
    private double Misfit(UnitState which, double? gramsPerHour = null)
    {
        var rate = observed.RatePerHour is { } seen
            ? Square(Math.Log(seen / Math.Max(1e-12, RateOf(which))) / RateUncertainty)
            : 0;
        var comesIn = gramsPerHour ?? planned.WaterIngress.GramsPerHour;
        var collected = conditions.CondensateFlow is { } some
            ? Square(Math.Log(Math.Max(Trace, some.GramsPerHour) / Math.Max(Trace, comesIn)) / CondensateError)
            : 0;
        return rate + collected;
    }

    private sealed record Part(
        StallCauseKind Kind,
        double Ppm,
        IReadOnlyList<EvidenceItem> Evidence,
        IReadOnlyList<StallCheck> Checks
    )
    {
        public StallDiagnosis.Cause Of(double share) => new(Kind, share, Evidence, Checks);
    }

    private sealed record Scored(
        StallCauseKind Kind,
        double Score,
        IReadOnlyList<EvidenceItem> Evidence,
        IReadOnlyList<StallCheck> Checks,
        StallCheck Tells
    )
    {
        public StallDiagnosis.Cause Of(double share) => new(Kind, share, Evidence, Checks);
    }
}
