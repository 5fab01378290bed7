using System.Text.Json;
using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;
using OilCondition.Tests.Treatment;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Cleanup;

/// <summary>Whatever comes in: an error that names its argument, or an answer without NaN and infinity.</summary>
public class LiveDoorsTests
{
    private static Gen<double> OneOf(params double[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    /// <summary>Numbers of every size, in range and far out of it, and those that are none.</summary>
    private static readonly Gen<double> Any = Gen.OneOf(
        Gen.Double[-10, 1000],
        Gen.Double[0, 1],
        OneOf(0.0, 1, -1, 1e-12, 1e-300, 1e300, -1e300, 1e9, 300_000, double.NaN, double.PositiveInfinity)
    );

    /// <summary>Numbers inside the ranges of the doors, with their ends.</summary>
    private static readonly Gen<double> Inside = Gen.OneOf(Gen.Double[0, 1], OneOf(0.0, 1, 1e-12, 0.5));

    private static void Answered(Func<object> answer)
    {
        try
        {
            AllNumbers.NotFinite(answer()).ShouldBeEmpty();
        }
        catch (ArgumentException error)
        {
            error.ParamName.ShouldNotBeNullOrEmpty(error.Message);
            error.Message.ShouldContain(error.ParamName);
        }
    }

    private static CleanupReading Of(double hour, double one, double other, int kind) =>
        kind switch
        {
            0 => CleanupReading.Sensor(
                Runs.At(hour),
                Ratio.FromDecimalFractions(one),
                LiveRuns.Celsius(-40 + 190 * other)
            ),
            1 => CleanupReading.Titration(Runs.At(hour), LiveRuns.Ppm(300_000 * one), LiveRuns.Celsius(50)),
            2 => CleanupReading.OfParticles(
                Runs.At(hour),
                new ParticleLevels(1e9 * one, 1e9 * one * other, 1e9 * one * other * other)
            ),
            3 => CleanupReading.OfTemperature(Runs.At(hour), LiveRuns.Celsius(50)),
            _ => CleanupReading.Sensor(Runs.At(hour), Ratio.FromDecimalFractions(one), LiveRuns.Celsius(50)),
        };

    /// <summary>UnitsNet refuses NaN and infinity itself; what comes through is ours to refuse.</summary>
    private static double Usable(double value) => double.IsFinite(value) ? value : 1e301;

    [Fact]
    public void Readings_and_options_refuse_by_name() =>
        Gen.Select(Any, Any, Any, Any, Gen.Int[-5, 200_000])
            .Holds(
                (a, b, c, d, n) =>
                {
                    Answered(() =>
                        CleanupReading.Sensor(
                            Invented.Start,
                            Ratio.FromDecimalFractions(Usable(a)),
                            LiveRuns.Celsius(Usable(b))
                        )
                    );
                    Answered(() => CleanupReading.Titration(Invented.Start, LiveRuns.Ppm(Usable(a))));
                    Answered(() => new ParticleLevels(a, b, c));
                    Answered(() =>
                        CleanupMonitorOptions.WhileWarm(
                            Invented.Start,
                            new TreatmentTarget(LiveRuns.Ppm(Usable(a))),
                            Invented.Curve,
                            AnySpan.Hours(Usable(b)),
                            LiveRuns.Celsius(Usable(c)),
                            AnySpan.Hours(Usable(d)),
                            AnySpan.Hours(Usable(a)),
                            n,
                            AnySpan.Hours(Usable(b))
                        )
                    );
                    Answered(() =>
                        new CleanupRunFacts(
                            "x",
                            new CleanupLoop(Volume.FromLiters(Usable(a)), VolumeFlow.FromLitersPerHour(Usable(b))),
                            Density.FromKilogramsPerCubicMeter(Usable(c)),
                            LiveRuns.Ppm(Usable(d)),
                            Volume.FromLiters(Usable(a)),
                            Volume.FromLiters(Usable(b)),
                            waterIngress: MassFlow.FromGramsPerHour(Usable(c)),
                            floorWithoutIngress: LiveRuns.Ppm(Usable(d))
                        )
                    );
                    Answered(() =>
                        new RunConditions(
                            LiveRuns.Celsius(Usable(a)),
                            LiveRuns.Celsius(Usable(b)),
                            LiveRuns.Ppm(Usable(c)),
                            LiveRuns.Ppm(Usable(d))
                        )
                    );
                },
                iter: 200
            );

    /// <summary>Placeholders of a database for 'unknown', and targets that no count can show.</summary>
    [Fact]
    public void Moments_and_codes_that_mean_nothing_are_refused()
    {
        void Refused(Action action, string name) => Should.Throw<ArgumentException>(action).ParamName.ShouldBe(name);
        Refused(() => CleanupReading.OfTemperature(DateTimeOffset.MaxValue, LiveRuns.Celsius(50)), "at");
        Refused(() => CleanupReading.OfTemperature(DateTimeOffset.MinValue, LiveRuns.Celsius(50)), "at");
        Refused(
            () =>
                CleanupMonitorOptions.WhileWarm(
                    DateTimeOffset.MaxValue,
                    new TreatmentTarget(LiveRuns.Ppm(60)),
                    Invented.Curve,
                    AnySpan.Hours(4),
                    LiveRuns.Celsius(45)
                ),
            "startedAt"
        );
        Refused(() => _ = new TreatmentTarget(code: CleanlinessCode.Parse("*/16/13")), "code");
        new TreatmentTarget(code: CleanlinessCode.Parse("-/-/13")).Code.ShouldNotBeNull();
    }

    /// <summary>Logs of any shape: constant, jumping, all at one moment, a year apart, saturated, empty.</summary>
    [Fact]
    public void Any_log_is_answered() =>
        Gen.Select(
                Gen.Select(Gen.OneOf(Gen.Double[0, 40], OneOf(0.0, 1e-7, 8000)), Inside, Inside, Gen.Int[0, 4]).Array[
                    0,
                    25
                ],
                Gen.Select(Inside, OneOf(1.0 / 60, 4, 8760), OneOf(0.001, 0.5, 0.9, 0.999)),
                Gen.Select(OneOf(1e-6, 2000, 1e12), OneOf(1e-6, 1200, 1e12), Inside)
            )
            .Holds(
                (log, asked, plant) =>
                {
                    var (target, hold, confidence) = asked;
                    var (litres, flow, share) = plant;
                    var options = CleanupMonitorOptions.WhileWarm(
                        Invented.Start,
                        new TreatmentTarget(LiveRuns.Ppm(300 * target), CleanlinessCode.Parse("17/15/12")),
                        Invented.Curve,
                        AnySpan.Hours(hold),
                        LiveRuns.Celsius(45),
                        mostCells: 16
                    );
                    var status = CleanupMonitor
                        .Of(options, log.Select(one => Of(one.Item1, one.Item2, one.Item3, one.Item4)))
                        .Status(confidence);
                    Answered(() => status);
                    status.ToString().ShouldNotContain("NaN");

                    var planned = new PlannedPerformance(
                        new CleanupLoop(Volume.FromLiters(litres), VolumeFlow.FromLitersPerHour(flow)),
                        LiveRuns.Oil870,
                        Ratio.FromDecimalFractions(Math.Max(1e-9, share)),
                        LiveRuns.Ppm(300_000 * target),
                        MassFlow.FromKilogramsPerHour(1e6 * share)
                    );
                    var diagnosis = StallDiagnosis.Of(
                        status.Curve,
                        LiveRuns.Ppm(300 * target),
                        planned,
                        new RunConditions(
                            LiveRuns.Celsius(50),
                            LiveRuns.Celsius(60),
                            LiveRuns.Ppm(300_000 * share),
                            LiveRuns.Ppm(300_000 * target)
                        ),
                        confidence
                    );
                    Answered(() => diagnosis);
                    Answered(() => ObservedAgainstPlanned.Of(status.Curve, planned, confidence));
                    var record = CleanupRecord.Of(
                        status,
                        new CleanupRunFacts(
                            "x",
                            planned.Loop,
                            LiveRuns.Oil870,
                            LiveRuns.Ppm(300_000 * share),
                            condensate: Volume.FromLiters(1e9 * target),
                            floorWithoutIngress: LiveRuns.Ppm(300 * share)
                        ),
                        diagnosis
                    );
                    Answered(() => record);
                    JsonDocument.Parse(record.ToJson()).Dispose();
                    (record.ToText() + diagnosis).ShouldNotContain("NaN");
                    record.ToText().ShouldNotContain("∞");
                },
                iter: 60
            );

    /// <summary>Every treatment on tasks at the ends of their ranges: a row without NaN, or an error by name.</summary>
    [Fact]
    public void Any_task_has_rows_for_all_treatments() =>
        Gen.Select(
                Gen.Select(OneOf(1e-3, 2000, 1e9), Gen.Double[-40, 120], OneOf(0.0, 40, 1e6), Inside),
                Gen.Select(OneOf(0.0, 1e-9, 900, 300_000), OneOf(0.0, 60, 300_000), Inside),
                Gen.Select(OneOf(1e-3, 40, 1e5), OneOf(500.0, 872, 2650, 25_000), Inside)
            )
            .Holds(
                (tank, water, plant) =>
                {
                    var (litres, start, loss, ingress) = tank;
                    var (ppm, target, emulsified) = water;
                    var (flow, density, share) = plant;
                    var job = Sump.Job(
                        ppm,
                        target,
                        Sump.Tank(
                            litres,
                            start,
                            20,
                            loss,
                            1e9 * ingress,
                            new ParticleIngression(1e15 * ingress, 1e15 * ingress, 1e15 * ingress)
                        ),
                        emulsified: emulsified,
                        targetCode: "18/16/13"
                    );
                    var loop = new SideLoop(
                        new PumpViscosityLimit(
                            VolumeFlow.FromLitersPerMinute(flow),
                            KinematicViscosity.FromCentistokes(700)
                        ),
                        Sump.Celsius(50),
                        Power.FromKilowatts(12)
                    );
                    var particles = Density.FromKilogramsPerCubicMeter(density);
                    ITreatment[] treatments =
                    [
                        new SettlingAndDraining(Length.FromMeters(1), Length.FromMicrometers(100), null, particles),
                        new Centrifuge(
                            loop,
                            Area.FromSquareMeters(0.1 + 1e6 * share),
                            Length.FromMicrometers(20),
                            Length.FromMicrometers(3),
                            particles
                        ),
                        new WaterAbsorbingElements(
                            loop,
                            Ratio.FromDecimalFractions(Math.Max(1e-9, share)),
                            Volume.FromLiters(0.5)
                        ),
                        new FineFiltration(loop, Sump.Filter, 1),
                        new DrainAndRefill(
                            Ratio.FromDecimalFractions(0.99 * share),
                            Sump.Ppm(40),
                            ParticleLevels.FromCode(CleanlinessCode.Parse("17/15/12")),
                            VolumeFlow.FromLitersPerMinute(flow)
                        ),
                    ];
                    foreach (var treatment in treatments)
                    {
                        Answered(() => treatment.Assess(job));
                    }
                },
                iter: 30
            );
}
