using System.Globalization;
using OilCondition.Cleanup;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Benchmarks.Quality;

/// <summary>What is said of a cleanup while it runs, on plants of our own: those that constants were chosen on ('seen'), and others.</summary>
public static class RunRows
{
    private static readonly DryingTank[] Seen =
    [
        new(3200, 2600, 0.62, 4200, 0, 2, 84, 322),
        new(5600, 3000, 0.70, 6200, 0.8, 40, 118, 410),
        new(1300, 900, 0.55, 3000, 0.3, 8, 66, 255),
    ];

    private static readonly DryingTank[] HeldOut =
    [
        new(1750, 1500, 0.66, 5000, 0.6, 14, 97, 355),
        new(4100, 2300, 0.58, 7500, 1.1, 26, 104, 372),
        new(8800, 4800, 0.73, 3600, 0, 4, 77, 290),
    ];

    /// <param name="runs">Runs a row.</param>
    /// <param name="isSeen">Whether on the plants that constants were chosen on.</param>
    /// <param name="words">Only rows whose name has these words; null for all.</param>
    public static void Run(int runs, bool isSeen, string? words)
    {
        var plants = isSeen ? Seen : HeldOut;
        var seed = isSeen ? 4_100 : 90_200;
        Console.WriteLine("| running cleanup | measured | runs |");
        Console.WriteLine("|---|---|---|");
        foreach (var (name, measure) in Rows(plants, runs, seed).Where(row => row.Name.Contains(words ?? "")))
        {
            Console.WriteLine($"| {name} | {measure()} | {runs} |");
        }
    }

    private static IEnumerable<(string Name, Func<string> Measure)> Rows(DryingTank[] plants, int runs, int seed)
    {
        yield return ("leak, titrations rise, looked at each 2 h", () => Leak(plants, runs, seed, 2.6, 1, 2));
        yield return (
            "leak, titrations stand above saturation, each 2 h",
            () => Leak(plants, runs, seed + 1, 1.9, 1.9, 2)
        );
        yield return ("leak, titrations rise, each 8 h", () => Leak(plants, runs, seed + 2, 2.6, 1, 8));
        yield return ("leak, sensor pinned", () => Pinned(plants, runs, seed + 3));
        yield return ("leak, sensor pinned, a titration each 8 h", () => Pinned(plants, runs, seed + 26, 8));
        yield return ("heater off, oil at 35 to 45 °C", () => Causes(plants, runs, seed + 4, Cold));
        yield return ("ingress, vacuum as planned", () => Causes(plants, runs, seed + 5, Ingress));
        yield return (
            "sweep valve shut",
            () => Causes([.. plants.Where(one => one.SweepKilogramPerHour > 0)], runs, seed + 6, SweepShut)
        );
        yield return ("vacuum poor, gauge right", () => Causes(plants, runs, seed + 7, PoorVacuum));
        yield return ("vacuum poor, gauge stuck at the plan", () => Causes(plants, runs, seed + 8, StuckGauge));
        yield return ("oil cold, thermometer at the plan", () => Causes(plants, runs, seed + 9, WrongThermometer));
        yield return (
            "ingress to the level that no sweep air would give",
            () => Causes([.. plants.Where(one => one.SweepKilogramPerHour > 0)], runs, seed + 27, IngressLikeNoSweep)
        );
        yield return ("ingress, with condensate", () => Causes(plants, runs, seed + 20, IngressWithCondensate));
        yield return ("ingress, gauges confirmed", () => Causes(plants, runs, seed + 21, ConfirmedIngress));
        yield return (
            "ingress, the plan's efficiency half too high",
            () => Causes(plants, runs, seed + 22, Optimistic)
        );
        yield return ("gauge stuck, with condensate", () => Causes(plants, runs, seed + 23, StuckGaugeWithCondensate));
        yield return ("flow halved by a clogged filter", () => Causes(plants, runs, seed + 10, HalfFlow));
        yield return (
            "nothing amiss, target a fifth below what the plan can do",
            () => Causes(plants, runs, seed + 30, AsPlanned)
        );
        yield return (
            "true exponential, sd 3 %, n = 48, looked at each reading",
            () => Exponential(runs, seed + 11, 48, 1)
        );
        yield return ("true exponential, sd 3 %, n = 24", () => Exponential(runs, seed + 12, 24, 2));
        yield return ("true exponential, sd 3 %, n = 192", () => Exponential(Math.Min(runs, 60), seed + 13, 192, 0.25));
        yield return (
            "the same, n = 96, readings that follow one another (lag 1 of 0.6)",
            () => Exponential(runs, seed + 25, 96, 0.5, 0.6)
        );
        yield return ("level 10 to 40 % above the target, sd 3 %, n = 96", () => Above(runs, seed + 14));
        yield return ("flat from the start, sd 3 %, n = 96", () => Flat(runs, seed + 15));
        yield return (
            "as planned, titrations each 2 h, water stirred up from the bottom",
            () => Healthy(plants, runs, seed + 16)
        );
        yield return (
            "the same, slow: a fifth of the flow, stirred up for 3 h",
            () => Healthy(plants, runs, seed + 24, 0.2, 3)
        );
        yield return (
            "the same, very slow: a time constant of some 40 h, stirred up for 3 h",
            () => Healthy(plants, runs, seed + 31, 0.075, 3)
        );
        yield return (
            "very slow, followed with three planned time constants as the waiting time",
            () => Healthy(plants, runs, seed + 31, 0.075, 3, waits: 3)
        );
        yield return (
            "as planned, slow: a fifth of the flow, each 2 h",
            () => Healthy(plants, runs, seed + 17, slow: 0.2)
        );
        yield return (
            "water of the bottom comes up for 8 h, each 2 h",
            () => Healthy(plants, runs, seed + 32, stirHours: 8)
        );
        yield return (
            "a fifth of the flow beside a plan with all of it, each 2 h",
            () => Healthy(plants, runs, seed + 33, slow: 0.2, plannedFlowShare: 1)
        );
        yield return (
            "half of the flow beside a plan with all of it, each 2 h",
            () => Healthy(plants, runs, seed + 34, slow: 0.5, plannedFlowShare: 1)
        );
        yield return ("as planned, warm-up, sensor each 0.5 h", () => HealthySensor(plants, runs, seed + 18));
        yield return ("ingress starts after 5 h while it still falls, sensor", () => MidRun(plants, runs, seed + 19));
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static double Between(Random random, double low, double high) => low + (high - low) * random.NextDouble();

    private static DateTimeOffset At(double hour) =>
        DryingTank.Start + TimeSpan.FromTicks((long)Math.Round(hour * TimeSpan.TicksPerHour));

    private static MassFraction Ppm(double ppm) => MassFraction.FromPartsPerMillion(ppm);

    private static CleanupMonitorOptions Options(
        DryingTank plant,
        double targetPpm,
        PurificationPlan plan,
        double? stallAfterHours = null,
        bool isPlanned = true
    ) =>
        CleanupMonitorOptions.ReferredTo(
            DryingTank.Start,
            new TreatmentTarget(Ppm(targetPpm)),
            plan.Job.Oil.SaturationCurve,
            TimeSpan.FromHours(4),
            Temperature.FromDegreesCelsius(20),
            TimeSpan.FromHours(24),
            stallAfter: stallAfterHours is { } hours ? TimeSpan.FromHours(hours) : null,
            planned: isPlanned ? PlannedPerformance.Of(plan) : null
        );

    private static CleanupReading Titration(Random random, double hour, double ppm, double scatter, double celsius) =>
        CleanupReading.Titration(
            At(hour),
            Ppm(Math.Max(0, ppm * (1 + scatter * Normal(random)))),
            Temperature.FromDegreesCelsius(celsius)
        );

    private static CleanupReading Sensor(DryingTank plant, Random random, double hour, double ppm, double celsius) =>
        CleanupReading.Sensor(
            At(hour),
            Ratio.FromDecimalFractions(
                Math.Min(
                    1,
                    Math.Max(
                        0,
                        Math.Min(1, ppm / plant.SaturationPpm(celsius)) * (1 + 0.015 * Normal(random))
                            + 0.002 * Normal(random)
                    )
                )
            ),
            Temperature.FromDegreesCelsius(celsius)
        );

    private static string Quantiles(List<double> hours) =>
        hours.Count == 0
            ? "-"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{hours.Order().ElementAt(hours.Count / 2):0.#} h (90 %: {hours.Order().ElementAt(Math.Min(hours.Count - 1, 9 * hours.Count / 10)):0.#})"
            );

    /// <summary>A leak that is a multiple of what the unit takes out at saturation, from a start of a multiple of saturation.</summary>
    private static string Leak(DryingTank[] plants, int runs, int seed, double leak, double start, double every)
    {
        var random = new Random(seed);
        List<double> called = [];
        List<double> alone = [];
        var (named, held) = (0, 0);
        for (var run = 0; run < runs; run++)
        {
            var plant = plants[run % plants.Length];
            var saturation = plant.SaturationPpm(plant.Celsius);
            var first = start * saturation;
            var gram =
                leak * Between(random, 0.9, 1.1) * plant.RemovedPerHour(0, saturation) * plant.OilKilograms / 1000;
            var standing = start > 1.5;
            var course = plant with { TrueGramPerHour = _ => gram };
            if (standing)
            {
                gram = course.RemovedPerHour(0, first) * plant.OilKilograms / 1000;
                course = plant with { TrueGramPerHour = _ => gram };
            }

            var contents = course.Course(first, 72);
            var target = 0.35 * saturation;
            var plan = plant.Plan(first, target);
            var monitor = new CleanupMonitor(Options(plant, target, plan));
            var unplanned = new CleanupMonitor(Options(plant, target, plan, isPlanned: false));
            var (isCalled, isCalledAlone) = (false, false);
            for (var hour = 0.0; hour <= 72 && !(isCalled && isCalledAlone); hour += every)
            {
                var reading = Titration(random, hour, DryingTank.At(contents, hour), 0.03, plant.Celsius);
                unplanned.Take(reading);
                if (!isCalledAlone && unplanned.Status().Phase == CleanupPhase.Stalled)
                {
                    isCalledAlone = true;
                    alone.Add(hour);
                }

                monitor.Take(reading);
                var status = monitor.Status();
                if (!isCalled && status.Phase == CleanupPhase.Stalled)
                {
                    isCalled = true;
                    called.Add(hour);
                    var why = Diagnose(status, plan, plant);
                    named += why.Causes.Count > 0 && why.Causes[0].Kind == StallCauseKind.WaterIngress ? 1 : 0;
                    held += Holds(why, gram) ? 1 : 0;
                }
            }
        }

        return $"stalled {ScoreRow.Percent(called.Count, runs)} after {Quantiles(called)}, water first {ScoreRow.Percent(named, runs)}, interval holds {ScoreRow.Percent(held, runs)}; without a plan {ScoreRow.Percent(alone.Count, runs)} after {Quantiles(alone)}";
    }

    private static string Pinned(DryingTank[] plants, int runs, int seed, double every = 0)
    {
        var random = new Random(seed);
        List<double> called = [];
        List<double> alone = [];
        List<double> asked = [];
        var (named, held) = (0, 0);
        for (var run = 0; run < runs; run++)
        {
            var plant = plants[run % plants.Length];
            var saturation = plant.SaturationPpm(plant.Celsius);
            var gram = Between(random, 1.3, 3) * plant.RemovedPerHour(0, saturation) * plant.OilKilograms / 1000;
            var first = Between(random, 1.2, 2) * saturation;
            var contents = (plant with { TrueGramPerHour = _ => gram }).Course(first, 72);
            var target = 0.35 * saturation;
            var plan = plant.Plan(first, target);
            CleanupMonitor[] monitors =
            [
                new(Options(plant, target, plan)),
                new(Options(plant, target, plan, isPlanned: false)),
            ];
            void Take(CleanupReading reading)
            {
                monitors[0].Take(reading);
                monitors[1].Take(reading);
            }

            Take(Titration(random, 0, first, 0.03, plant.Celsius));
            var (isCalled, isCalledAlone) = (false, false);
            for (var hour = 0.25; hour <= 72 && !(isCalled && isCalledAlone); hour += 0.5)
            {
                if (every > 0 && hour > every && (hour - 0.25) % every < 0.1)
                {
                    Take(Titration(random, hour - 0.2, DryingTank.At(contents, hour - 0.2), 0.03, plant.Celsius));
                }

                Take(
                    CleanupReading.Sensor(
                        At(hour),
                        Ratio.FromDecimalFractions(Math.Min(1, DryingTank.At(contents, hour) / saturation)),
                        Temperature.FromDegreesCelsius(plant.Celsius)
                    )
                );
                var unplanned = monitors[1].Status();
                if (asked.Count == run && unplanned.ToString().Contains("titrate"))
                {
                    asked.Add(hour);
                }

                if (!isCalledAlone && unplanned.Phase == CleanupPhase.Stalled)
                {
                    isCalledAlone = true;
                    alone.Add(hour);
                }

                var status = monitors[0].Status();
                if (!isCalled && status.Phase == CleanupPhase.Stalled)
                {
                    isCalled = true;
                    called.Add(hour);
                    var why = Diagnose(status, plan, plant);
                    named += why.Causes.Count > 0 && why.Causes[0].Kind == StallCauseKind.WaterIngress ? 1 : 0;
                    held += Holds(why, gram) ? 1 : 0;
                }
            }
        }

        return $"stalled {ScoreRow.Percent(called.Count, runs)} after {Quantiles(called)}, water first {ScoreRow.Percent(named, runs)}, bound holds {ScoreRow.Percent(held, runs)}; without a plan asks for a titration after {Quantiles(asked)}, stalled {ScoreRow.Percent(alone.Count, runs)} after {Quantiles(alone)}";
    }

    private sealed record Fault(DryingTank Truth, double GaugeCelsius, double GaugePascal, StallCauseKind[] First)
    {
        public double? CondensateGramPerHour { get; init; }

        public bool IsConfirmed { get; init; }

        /// <summary>Whether the target lies below what the plan can do.</summary>
        public bool IsBelowPlan { get; init; }
    }

    private static string Causes(DryingTank[] plants, int runs, int seed, Func<DryingTank, Random, Fault> of)
    {
        var random = new Random(seed);
        var (stalled, first, certain, within, held) = (0, 0, 0, 0, 0);
        var others = new Dictionary<string, int>();
        for (var run = 0; run < runs; run++)
        {
            var plant = plants[run % plants.Length];
            var fault = of(plant, random);
            var (truth, kinds) = (fault.Truth, fault.First);
            var saturation = plant.SaturationPpm(truth.CelsiusAt(0));
            var contents = truth.Course(0.9 * saturation, 60);
            var plan = plant.Plan(0.9 * saturation, 100);
            var planned = PlannedPerformance.Of(plan).Level.PartsPerMillion;

            // A tenth above the plan, but no more than half of the way to where the fault leads: what reaches its target is no stall.
            var target = fault.IsBelowPlan
                ? 0.8 * planned
                : Math.Min(
                    1.1 * planned,
                    planned + Math.Max(0.02 * planned, (DryingTank.At(contents, 48) - planned) / 2)
                );
            var monitor = new CleanupMonitor(Options(plant, target, plan));
            for (var hour = 0.0; hour <= 48; hour += 0.5)
            {
                monitor.Take(Sensor(plant, random, hour, DryingTank.At(contents, hour), truth.CelsiusAt(hour)));
            }

            var status = monitor.Status();
            var why = Diagnose(status, plan, fault);
            stalled += why.Verdict == StallVerdict.Stalled ? 1 : 0;
            var word = why.Causes.Count == 0 ? why.Verdict.ToString() : why.Causes[0].Kind.ToString();
            var isFirst = why.Causes.Count > 0 && kinds.Contains(why.Causes[0].Kind);
            first += isFirst ? 1 : 0;
            within += IsAmong(why, kinds) ? 1 : 0;
            certain += why.IsCauseTold ? 1 : 0;
            held += Holds(why, truth.TrueGramPerHour(0)) ? 1 : 0;
            if (!isFirst)
            {
                others[word] = others.GetValueOrDefault(word) + 1;
            }
        }

        var rate = held > 0 ? $", rate interval holds {ScoreRow.Percent(held, runs)}" : "";
        var otherwise =
            others.Count > 0
                ? $"; else {string.Join(", ", others.OrderByDescending(one => one.Value).Select(one => $"{one.Key} {one.Value}"))}"
                : "";
        return $"stalled {ScoreRow.Percent(stalled, runs)}, cause first {ScoreRow.Percent(first, runs)}, named {ScoreRow.Percent(within, runs)}, sure of itself {ScoreRow.Percent(certain, runs)}{rate}{otherwise}";
    }

    private static Fault Cold(DryingTank plant, Random random)
    {
        var celsius = Between(random, 35, 45);
        return new(
            plant with
            {
                TrueCelsius = _ => celsius,
            },
            celsius,
            plant.PressurePascal,
            [StallCauseKind.OilTooCold]
        );
    }

    /// <summary>A level of 1.6 to 4 times the planned one, a fifth or more away from the one that no sweep air would give.</summary>
    private static Fault Ingress(DryingTank plant, Random random)
    {
        var shut = LevelWithoutSweep(plant);
        double level;
        do
        {
            level = Between(random, 1.6, 4) * plant.Plan(300, 100).End.WaterLevel!.Value.PartsPerMillion;
        } while (plant.SweepKilogramPerHour > 0 && Math.Abs(Math.Log(level / shut)) < 0.2);

        return IngressTo(plant, level);
    }

    /// <summary>The level that no sweep air would give as well: nobody can tell them apart by it.</summary>
    private static Fault IngressLikeNoSweep(DryingTank plant, Random random) =>
        IngressTo(plant, Between(random, 0.93, 1.07) * LevelWithoutSweep(plant));

    private static double LevelWithoutSweep(DryingTank plant) =>
        plant.SaturationPpm(plant.Celsius)
            * plant.PressurePascal
            / (611.2 * Math.Exp(17.62 * plant.Celsius / (243.12 + plant.Celsius)))
        + 1000 * plant.PlannedGramPerHour / plant.OilKilograms / (plant.Removal * plant.LitresPerHour / plant.Litres);

    private static Fault IngressTo(DryingTank plant, double level)
    {
        var gram = plant.RemovedPerHour(0, level) * plant.OilKilograms / 1000;
        return new(
            plant with
            {
                TrueGramPerHour = _ => gram,
            },
            plant.Celsius,
            plant.PressurePascal,
            [StallCauseKind.WaterIngress]
        );
    }

    /// <summary>The same with what runs into the vessel, to a fifth: that is the reading that tells.</summary>
    private static Fault IngressWithCondensate(DryingTank plant, Random random)
    {
        var fault = Ingress(plant, random);
        return fault with { CondensateGramPerHour = fault.Truth.TrueGramPerHour(0) * Between(random, 0.85, 1.05) };
    }

    private static Fault StuckGaugeWithCondensate(DryingTank plant, Random random) =>
        StuckGauge(plant, random) with
        {
            CondensateGramPerHour = plant.PlannedGramPerHour * Between(random, 0.85, 1.05),
        };

    private static Fault ConfirmedIngress(DryingTank plant, Random random) =>
        Ingress(plant, random) with
        {
            IsConfirmed = true,
        };

    /// <summary>The plan counts on half as much again as the unit takes out.</summary>
    private static Fault Optimistic(DryingTank plant, Random random) =>
        new(
            plant with
            {
                TrueFlowShare = _ => 0.67,
                TrueGramPerHour = Ingress(plant, random).Truth.TrueGramPerHour,
            },
            plant.Celsius,
            plant.PressurePascal,
            [StallCauseKind.WaterIngress]
        );

    private static Fault SweepShut(DryingTank plant, Random random) =>
        new(
            plant with
            {
                TrueSweepShare = _ => 0,
                TrueGramPerHour = _ => plant.PlannedGramPerHour * Between(new Random(7), 0.7, 1.3),
            },
            plant.Celsius + Between(random, -1, 1),
            plant.PressurePascal * Between(random, 0.97, 1.03),
            [StallCauseKind.SweepAirMissing]
        );

    private static Fault PoorVacuum(DryingTank plant, Random random)
    {
        var pascal = plant.PressurePascal * Between(random, 2, 3);
        return new(
            plant with
            {
                TruePascal = _ => pascal,
            },
            plant.Celsius,
            pascal * Between(random, 0.97, 1.03),
            [StallCauseKind.PoorVacuum]
        );
    }

    private static Fault StuckGauge(DryingTank plant, Random random)
    {
        var pascal = plant.PressurePascal * Between(random, 2, 3);
        return new(
            plant with
            {
                TruePascal = _ => pascal,
            },
            plant.Celsius,
            plant.PressurePascal,
            [StallCauseKind.VacuumGaugeWrong]
        );
    }

    private static Fault WrongThermometer(DryingTank plant, Random random)
    {
        var celsius = plant.Celsius - Between(random, 14, 24);
        return new(
            plant with
            {
                TrueCelsius = _ => celsius,
            },
            plant.Celsius,
            plant.PressurePascal,
            [StallCauseKind.ThermometerWrong]
        );
    }

    /// <summary>As planned, but for gauges that read a kelvin and 3 % wrong, and ingress that is known to a third.</summary>
    private static Fault AsPlanned(DryingTank plant, Random random)
    {
        var (celsius, pascal) = (
            plant.Celsius + Between(random, -1, 1),
            plant.PressurePascal * Between(random, 0.97, 1.03)
        );
        var gram = plant.PlannedGramPerHour * Between(random, 0.7, 1.3);
        return new(
            plant with
            {
                TrueCelsius = _ => celsius,
                TruePascal = _ => pascal,
                TrueGramPerHour = _ => gram,
            },
            plant.Celsius,
            plant.PressurePascal,
            [StallCauseKind.VacuumOrSweepAir]
        )
        {
            IsBelowPlan = true,
        };
    }

    private static Fault HalfFlow(DryingTank plant, Random random)
    {
        var share = Between(random, 0.4, 0.55);
        return new(
            plant with
            {
                TrueFlowShare = _ => share,
            },
            plant.Celsius,
            plant.PressurePascal,
            [StallCauseKind.BypassOrShortCircuit]
        );
    }

    /// <summary>Falls to 20 to 70 % of the target; whatever is said before the truth is there is too early.</summary>
    private static string Exponential(int runs, int seed, int count, double every, double lag = 0)
    {
        var random = new Random(seed);
        var plant = Seen[0];
        var (stalled, behind, early, curveEarly, done, reached) = (0, 0, 0, 0, 0, 0);
        List<double> late = [];
        for (var run = 0; run < runs; run++)
        {
            var start = Between(random, 240, 330);
            var target = Between(random, 80, 120);
            var level = target * Between(random, 0.2, 0.8);
            var constants = Between(random, 3, 5);
            var k = constants / (every * (count - 1));
            var plan = plant.Plan(start, target);
            var monitor = new CleanupMonitor(Options(plant, target, plan, isPlanned: false));
            var planned = new CleanupMonitor(Options(plant, target, plan));
            var truth = Math.Log((start - level) / (target - level)) / k;
            var (hasStalled, isBehind, hasEarly, hasCurve, hasDone, hasReached) = (
                false,
                false,
                false,
                false,
                false,
                false
            );
            var wander = Normal(random);
            for (var i = 0; i < count; i++)
            {
                var hour = i * every;
                wander = lag * wander + Math.Sqrt(1 - lag * lag) * Normal(random);
                var seen = (level + (start - level) * Math.Exp(-k * hour)) * (1 + 0.03 * wander);
                var reading = Titration(random, hour, seen, 0, 60);
                monitor.Take(reading);
                planned.Take(reading);
                var status = monitor.Status();
                var beside = planned.Status();
                isBehind |= beside.Phase == CleanupPhase.Stalled;
                hasStalled |= status.Phase == CleanupPhase.Stalled;
                hasEarly |= status.Phase == CleanupPhase.AtTarget && hour < truth;
                hasCurve |= status.CurveArrival is Arrival<DateTimeOffset>.Already && hour < truth;
                if (status.Curve.HasCurve && hour < truth)
                {
                    hasDone |= Diagnose(beside, plan, plant).Verdict == StallVerdict.Done;
                }

                if (status.Phase == CleanupPhase.AtTarget && !hasReached)
                {
                    hasReached = true;
                    late.Add(hour - truth);
                }
            }

            stalled += hasStalled ? 1 : 0;
            behind += isBehind ? 1 : 0;
            early += hasEarly ? 1 : 0;
            curveEarly += hasCurve ? 1 : 0;
            done += hasDone ? 1 : 0;
            reached += hasReached ? 1 : 0;
        }

        return $"false stall {ScoreRow.Percent(stalled, runs)}, beside a plan {ScoreRow.Percent(behind, runs)}, met too early {ScoreRow.Percent(early, runs)}, curve reached too early {ScoreRow.Percent(curveEarly, runs)}, diagnosis done too early {ScoreRow.Percent(done, runs)}; met {ScoreRow.Percent(reached, runs)}, {Quantiles(late)} after it was so (hold 4 h)";
    }

    private static string Above(int runs, int seed)
    {
        var random = new Random(seed);
        var plant = Seen[0];
        List<double> called = [];
        var (missed, met) = (0, 0);
        for (var run = 0; run < runs; run++)
        {
            var target = Between(random, 80, 120);
            var level = target * Between(random, 1.1, 1.4);
            var plan = plant.Plan(400, target);
            var k = Between(random, 0.12, 0.2);
            var monitor = new CleanupMonitor(Options(plant, target, plan));
            var (isCalled, isMet) = (false, false);
            for (var i = 0; i < 96; i++)
            {
                var hour = i * 0.5;
                monitor.Take(Titration(random, hour, level + (310 - level) * Math.Exp(-k * hour), 0.03, 60));
                var status = monitor.Status();
                isMet |= status.Phase == CleanupPhase.AtTarget;
                if (!isCalled && status.Phase == CleanupPhase.Stalled)
                {
                    isCalled = true;
                    called.Add(hour - Math.Log(10) / k);
                }
            }

            missed += isCalled ? 0 : 1;
            met += isMet ? 1 : 0;
        }

        return $"stalled {ScoreRow.Percent(runs - missed, runs)}, {Quantiles(called)} after nine tenths of the fall; said to be met {ScoreRow.Percent(met, runs)}";
    }

    private static string Flat(int runs, int seed)
    {
        var random = new Random(seed);
        var plant = Seen[0];
        List<double> called = [];
        for (var run = 0; run < runs; run++)
        {
            var target = Between(random, 80, 120);
            var level = target * Between(random, 1.3, 2);
            var plan = plant.Plan(400, target);
            var monitor = new CleanupMonitor(Options(plant, target, plan));
            for (var i = 0; i < 96; i++)
            {
                monitor.Take(Titration(random, i * 0.5, level, 0.03, 60));
                if (monitor.Status().Phase == CleanupPhase.Stalled)
                {
                    called.Add(i * 0.5);
                    break;
                }
            }
        }

        return $"stalled {ScoreRow.Percent(called.Count, runs)} after {Quantiles(called)}";
    }

    private static string Healthy(
        DryingTank[] plants,
        int runs,
        int seed,
        double slow = 1,
        double stirHours = 1.2,
        double? waits = null,
        double? plannedFlowShare = null
    )
    {
        var random = new Random(seed);
        var (stalled, wrong, rises) = (0, 0, 0);
        List<double> slower = [];
        for (var run = 0; run < runs; run++)
        {
            var plant = plants[run % plants.Length];
            var saturation = plant.SaturationPpm(plant.Celsius);
            var truth = plant with
            {
                BottomPpm = slow < 1 && stirHours < 2 ? 0 : Between(random, 0.5, 1.5) * saturation,
                StirHours = stirHours,
                PlannedGramPerHour = plant.PlannedGramPerHour * Math.Min(1, 5 * slow),
                TrueFlowShare = _ => slow,
            };
            var first = Between(random, 0.8, 2) * saturation;
            var contents = truth.Course(first, 72);
            var target = 0.4 * saturation;
            var plan = (truth with { LitresPerHour = plant.LitresPerHour * (plannedFlowShare ?? slow) }).Plan(
                first,
                target
            );
            var stallAfter = waits / PlannedPerformance.Of(plan).RatePerHour;
            var monitor = new CleanupMonitor(Options(plant, target, plan, stallAfter, isPlanned: false));
            var planned = new CleanupMonitor(Options(plant, target, plan, stallAfter));
            var (isStalled, isWrong, isSlower) = (false, false, false);
            for (var hour = 0.0; hour <= 72; hour += 2)
            {
                var reading = Titration(random, hour, DryingTank.At(contents, hour), 0.04, plant.Celsius);
                monitor.Take(reading);
                planned.Take(reading);
                isStalled |= monitor.Status().Phase == CleanupPhase.Stalled;
                var beside = planned.Status();
                isWrong |= beside.Phase == CleanupPhase.Stalled;
                if (!isSlower && IsSlower(beside))
                {
                    isSlower = true;
                    slower.Add(hour);
                }
            }

            stalled += isStalled ? 1 : 0;
            wrong += isWrong ? 1 : 0;
            rises += DryingTank.At(contents, 2) > first ? 1 : 0;
        }

        return $"false stall {ScoreRow.Percent(wrong, runs)}; without a plan {ScoreRow.Percent(stalled, runs)} (content rises at first in {ScoreRow.Percent(rises, runs)}); said to fall slower than planned {ScoreRow.Percent(slower.Count, runs)}"
            + (2 * slower.Count > runs ? $", after {Quantiles(slower)}" : "");
    }

    private static bool IsSlower(CleanupStatus status) =>
        status is { Phase: CleanupPhase.Falling, BesidePlan.RemovalAgreement: PlanAgreement.Worse };

    private static string HealthySensor(DryingTank[] plants, int runs, int seed)
    {
        var random = new Random(seed);
        var (stalled, wrong, slower) = (0, 0, 0);
        for (var run = 0; run < runs; run++)
        {
            var plant = plants[run % plants.Length];
            var heat = Between(random, 3, 7);
            var truth = plant with
            {
                BottomPpm = Between(random, 0, 0.6) * plant.SaturationPpm(plant.Celsius),
                TrueCelsius = hour => plant.Celsius - 40 * Math.Exp(-hour / heat),
            };
            var first = Between(random, 0.6, 2.5) * plant.SaturationPpm(plant.Celsius);
            var contents = truth.Course(first, 48);
            var target = 0.4 * plant.SaturationPpm(plant.Celsius);
            var plan = plant.Plan(first, target);
            var monitor = new CleanupMonitor(Options(plant, target, plan, isPlanned: false));
            var planned = new CleanupMonitor(Options(plant, target, plan));
            var (isStalled, isWrong, isSlower) = (false, false, false);
            for (var hour = 0.0; hour <= 48; hour += 0.5)
            {
                var reading = Sensor(plant, random, hour, DryingTank.At(contents, hour), truth.CelsiusAt(hour));
                monitor.Take(reading);
                planned.Take(reading);
                isStalled |= monitor.Status().Phase == CleanupPhase.Stalled;
                var beside = planned.Status();
                isWrong |= beside.Phase == CleanupPhase.Stalled;
                isSlower |= IsSlower(beside);
            }

            slower += isSlower ? 1 : 0;
            stalled += isStalled ? 1 : 0;
            wrong += isWrong ? 1 : 0;
        }

        return $"false stall {ScoreRow.Percent(wrong, runs)}; without a plan {ScoreRow.Percent(stalled, runs)}; said to fall slower than planned {ScoreRow.Percent(slower, runs)}";
    }

    private static string MidRun(DryingTank[] plants, int runs, int seed)
    {
        var random = new Random(seed);
        List<double> called = [];
        var early = 0;
        for (var run = 0; run < runs; run++)
        {
            var plant = plants[run % plants.Length];
            var saturation = plant.SaturationPpm(plant.Celsius);
            var gram = Between(random, 0.35, 0.6) * plant.RemovedPerHour(0, saturation) * plant.OilKilograms / 1000;
            var truth = plant with { TrueGramPerHour = hour => hour < 5 ? plant.PlannedGramPerHour : gram };
            var contents = truth.Course(0.9 * saturation, 72);
            var target = 0.85 * contents.Min();
            var plan = plant.Plan(0.9 * saturation, target);
            var monitor = new CleanupMonitor(Options(plant, target, plan));
            for (var hour = 0.0; hour <= 72; hour += 0.5)
            {
                monitor.Take(Sensor(plant, random, hour, DryingTank.At(contents, hour), plant.Celsius));
                if (monitor.Status().Phase == CleanupPhase.Stalled)
                {
                    early += hour <= 5 ? 1 : 0;
                    called.Add(hour - 5);
                    break;
                }
            }
        }

        return $"stalled {ScoreRow.Percent(called.Count, runs)}, {Quantiles(called)} after it began; before {ScoreRow.Percent(early, runs)}";
    }

    private static bool IsAmong(StallDiagnosis why, StallCauseKind[] kinds) =>
        why.Causes.Any(one => kinds.Contains(one.Kind));

    private static bool Holds(StallDiagnosis why, double gram) =>
        why.WaterIngress is { } water
        && (water.Lower?.GramsPerHour ?? 0) <= gram
        && (water.Upper?.GramsPerHour ?? double.MaxValue) >= gram;

    private static StallDiagnosis Diagnose(CleanupStatus status, PurificationPlan plan, Fault fault) =>
        StallDiagnosis.Of(
            status,
            RunConditions.Of(
                plan,
                Temperature.FromDegreesCelsius(fault.GaugeCelsius),
                Pressure.FromPascals(fault.GaugePascal),
                condensateFlow: fault.CondensateGramPerHour is { } collected
                    ? MassFlow.FromGramsPerHour(collected)
                    : null,
                pressureConfirmed: fault.IsConfirmed,
                temperatureConfirmed: fault.IsConfirmed
            )
        );

    private static StallDiagnosis Diagnose(CleanupStatus status, PurificationPlan plan, DryingTank plant) =>
        Diagnose(status, plan, new Fault(plant, plant.Celsius, plant.PressurePascal, []));
}
