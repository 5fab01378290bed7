using CsCheck;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>
/// Figures, moments and records that no plant has: each door takes them or refuses them by name, and what was taken gives finite results.
/// </summary>
public class ExtremeInputTests
{
    private static readonly Gen<int> Seeds = Gen.Int[0, int.MaxValue - 1];

    private static readonly double[] Extremes =
    [
        double.NaN,
        double.PositiveInfinity,
        double.NegativeInfinity,
        double.MaxValue,
        double.MinValue,
        double.Epsilon,
        1e300,
        -1e300,
        1e100,
        1e30,
        1e12,
        -1e12,
        1e-30,
        1e-300,
        0,
        -0.0,
        1,
        -1,
        1e9,
    ];

    private static readonly DateTimeOffset[] Moments =
    [
        DateTimeOffset.MinValue,
        DateTimeOffset.MaxValue,
        new(1900, 1, 1, 0, 0, 0, TimeSpan.Zero),
        new(2199, 12, 31, 23, 59, 59, AnySpan.Hours(-14)),
        Invented.Start,
        Invented.Start.ToOffset(AnySpan.Hours(14)),
        Invented.Start.AddTicks(1),
        Invented.Start.AddDays(1),
    ];

    /// <summary>Draws figures and moments, extreme ones now and then.</summary>
    private sealed class Draw(int seed)
    {
        private readonly Random random = new(seed);

        public int Below(int count) => random.Next(count);

        public double Figure(double from, double to) =>
            Below(10) == 0 ? Extremes[Below(Extremes.Length)] : from + (to - from) * random.NextDouble();

        public double Whole(int from, int to) =>
            Below(10) == 0 ? Extremes[Below(Extremes.Length)] : random.Next(from, to);

        public double? Perhaps(double from, double to) => Below(4) == 0 ? null : Figure(from, to);

        public DateTimeOffset Moment() =>
            Below(12) == 0 ? Moments[Below(Moments.Length)] : Invented.Start.AddDays(random.Next(0, 400));

        public T Enum<T>()
            where T : struct, Enum
        {
            var values = System.Enum.GetValues<T>();
            return values[Below(values.Length)];
        }
    }

    /// <summary>Names of arguments that a forecast may refuse; anything else comes from inside.</summary>
    private static readonly string[] Refusable =
    [
        "makeUpPercentPerYear",
        "charge",
        "newOilValue",
        "limit",
        "side",
        "asOf",
        "lastSampleAt",
        "acceleration",
        "fractionPerDay",
        "val",
    ];

    /// <summary>What a door gives, or the second choice where it refuses by name.</summary>
    private static T Try<T>(Func<T> door, Func<T> otherwise)
    {
        try
        {
            return door();
        }
        catch (ArgumentException refused)
        {
            refused.ParamName.ShouldNotBeNullOrEmpty(refused.Message);
            return otherwise();
        }
    }

    private static void Try(Action door)
    {
        try
        {
            door();
        }
        catch (ArgumentException refused)
        {
            refused.ParamName.ShouldBeOneOf(Refusable, refused.ToString());
        }
    }

    private static void Finite(double value) => double.IsFinite(value).ShouldBeTrue(value.ToString());

    [Fact]
    public void An_assessment_of_anything_is_refused_by_name_or_finite() =>
        Seeds.Holds(
            seed =>
            {
                var draw = new Draw(seed);
                Measurand[] measurands =
                [
                    Measurands.WaterContent,
                    Measurands.Particles4,
                    Measurands.Viscosity40,
                    Own(draw, "one"),
                    Own(draw, "other"),
                ];
                var machine = MachineOf(draw, measurands);
                var history = Try(
                    () => History(draw, machine, measurands),
                    () => Invented.History([Invented.Sample(0, 0)])
                );
                var limits = new LimitSet(
                    "any",
                    Enumerable.Range(0, 4).Select(_ => LimitOf(draw, measurands)).OfType<Limit>()
                ).WithFleet([history]);
                var options = Try(() => Options(draw), () => new AssessmentOptions(Invented.Start.AddDays(400)));

                // All doors are passed: nothing is refused any more, but a moment before the first record.
                if (history.TryFirstRecord(out var first) && first <= options.AsOf)
                {
                    Look(ConditionAssessor.Assess(history, limits, options));
                }
            },
            iter: 300
        );

    [Fact]
    public void A_forecast_of_anything_is_refused_by_name_or_finite() =>
        Seeds.Holds(
            seed =>
            {
                var draw = new Draw(seed);
                var measurand = Own(draw, "one");
                var history = Try(
                    () => History(draw, Invented.Machine, [measurand]),
                    () => Invented.History([Invented.Sample(0, 0, (measurand, new Reading(measurand.LowestPlausible)))])
                );
                var series = history.SampleSeries(
                    measurand,
                    Moments[draw.Below(Moments.Length)],
                    DateTimeOffset.MaxValue
                );
                Try(() =>
                {
                    var makeUp = draw.Below(2) == 0 ? 0 : draw.Figure(0, 200);
                    var newOil = draw.Figure(0, 100);
                    var fleet =
                        draw.Below(2) == 0 ? null : FleetKnowledge.From([series, series, series, series, series]);
                    var asOf = draw.Moment();
                    var life = LifeForecast.Of(
                        series,
                        draw.Figure(0, 100),
                        draw.Enum<LimitSide>(),
                        asOf,
                        new LifeOptions(draw.Enum<LifeModel>(), makeUp, newOil, fleet)
                    );
                    Look(life);
                    Look(FirstCrossing.Of([life, life], asOf));
                    Look(NextSample.After([life], draw.Moment(), Plan(draw), asOf));
                    if (life is RemainingLife.Forecast forecast)
                    {
                        Look(forecast.Crossing.WithAgeing(Ratio.FromDecimalFractions(draw.Figure(0.1, 10))));
                    }
                });
            },
            iter: 400
        );

    private static Measurand Own(Draw draw, string id) =>
        Try(
            () =>
                new Measurand(
                    id,
                    id,
                    "mg/kg",
                    draw.Enum<LimitSide>(),
                    draw.Enum<NaturalScale>(),
                    draw.Below(2) == 0 ? 0 : draw.Figure(-100, 0),
                    draw.Below(2) == 0 ? 1e12 : draw.Figure(0, 1000),
                    tellsOilIdentity: draw.Below(2) == 0,
                    addsUp: draw.Below(2) == 0
                ),
            () => new Measurand(id, id, "", LimitSide.Upper, NaturalScale.Logarithmic, 0, 1e12, addsUp: true)
        );

    private static Reading ReadingOf(Draw draw) =>
        Try(() => new Reading(draw.Figure(0, 100), draw.Enum<Qualifier>()), () => new Reading(1e12));

    private static Dictionary<Measurand, Reading> Readings(Draw draw, Measurand[] measurands) =>
        measurands
            .Concat([Measurands.RelativeSaturation, Measurands.OilTemperature, Measurands.OilHours])
            .Where(_ => draw.Below(4) > 0)
            .ToDictionary(measurand => measurand, _ => ReadingOf(draw));

    private static Machine MachineOf(Draw draw, Measurand[] measurands) =>
        Try(
            () =>
                new Machine(
                    "M1",
                    "any",
                    Try(
                        () => new Oil("any", Readings(draw, [.. measurands, Measurands.Density15]), Invented.Curve),
                        () => Invented.Oil
                    ),
                    Volume.FromLiters(draw.Figure(1, 1000)),
                    Temperature.FromDegreesCelsius(draw.Figure(-60, 200)),
                    Temperature.FromDegreesCelsius(draw.Figure(-60, 200))
                ),
            () => Invented.Machine
        );

    private static OilHistory History(Draw draw, Machine machine, Measurand[] measurands)
    {
        List<T> Some<T>(int most, Func<int, T> make)
            where T : class =>
            [.. Enumerable.Range(0, draw.Below(most)).Select(i => Try<T?>(() => make(i), () => null)).OfType<T>()];
        return OilHistory.Create(
            machine,
            Some(14, i => new OilSample($"S{i}", draw.Moment(), Readings(draw, measurands))),
            Some(6, _ => new SensorReading(draw.Moment(), Readings(draw, measurands))),
            [
                .. Some(2, _ => new OilChange(draw.Moment())),
                .. Some(5, _ => new TopUp(draw.Moment(), Volume.FromLiters(draw.Figure(1, 300)))),
                .. Some(
                    3,
                    _ => new TreatmentRun(
                        draw.Moment(),
                        draw.Below(2) == 0 ? null : draw.Moment(),
                        draw.Enum<TreatmentKind>(),
                        measurands[draw.Below(measurands.Length)],
                        draw.Figure(0, 100)
                    )
                ),
            ]
        );
    }

    private static LimitBand? Band(Draw draw) =>
        draw.Below(3) == 0 ? null : new LimitBand(draw.Perhaps(0, 100), draw.Perhaps(0, 100));

    private static Limit? LimitOf(Draw draw, Measurand[] measurands) =>
        Try(
            () =>
                new Limit(
                    measurands[draw.Below(measurands.Length)],
                    draw.Enum<LimitKind>(),
                    Band(draw),
                    Band(draw),
                    Source.CommonPractice("invented"),
                    draw.Below(2) == 0 ? 0 : draw.Figure(0, 100),
                    1 + draw.Below(3),
                    draw.Below(3) > 0 ? null : AnySpan.Days(draw.Figure(0, 100)),
                    draw.Below(2) == 0
                ),
            () => (Limit?)null
        );

    private static SamplingPlan Plan(Draw draw) =>
        Try(
            () =>
                new SamplingPlan(
                    Ratio.FromDecimalFractions(draw.Figure(0, 1)),
                    AnySpan.Days(draw.Figure(0, 100)),
                    AnySpan.Days(draw.Figure(100, 10_000))
                ),
            () => new SamplingPlan(Ratio.FromPercent(5), AnySpan.Days(1e-9), TimeSpan.FromDays(10_957))
        );

    private static AssessmentOptions Options(Draw draw) =>
        new(
            draw.Below(3) == 0 ? draw.Moment() : Invented.Start.AddDays(400),
            AnySpan.Days(draw.Figure(0, 36_525)),
            draw.Figure(0, 1),
            draw.Figure(0.0001, 0.5),
            draw.Below(2) == 0,
            Plan(draw)
        );

    private static void Look(ConditionAssessment assessment)
    {
        var text = assessment.ToJson() + string.Concat(assessment.Recommendations.Select(Sentences.English.Of));
        foreach (var word in new[] { "NaN", "Infinity", "∞" })
        {
            text.ShouldNotContain(word, Case.Sensitive);
        }

        foreach (var state in assessment.States)
        {
            var read = assessment.History.SampleSeries(
                state.Measurand,
                assessment.Charge.Since,
                assessment.Options.AsOf
            );
            Finite(TopUpCorrection.Of(read, assessment.History, assessment.Options.AsOf).TotalDrop);
            state.Lives.ToList().ForEach(Look);
        }

        Look(assessment.First);
        AlertJournal
            .Parse(AlertJournal.Empty.Reconcile(assessment).ToJson())
            .Entries.Count.ShouldBe(assessment.Alerts.Count);
    }

    private static void Look(RemainingLife life)
    {
        if (life is not RemainingLife.Forecast forecast)
        {
            return;
        }

        Look(forecast.Crossing);
        Finite(forecast.Trend.Slope);
        if (life is RemainingLife.Crosses crosses)
        {
            crosses.P10.ShouldBeLessThanOrEqualTo(crosses.P50);
            crosses.P50.ShouldBeLessThanOrEqualTo(crosses.P90);
        }

        if (life is RemainingLife.HeldByMakeUp held)
        {
            Finite(held.LongRunLevel);
            held.ChanceEver.ShouldBeInRange(0, 1);
        }
    }

    private static void Look(CrossingForecast crossing)
    {
        foreach (
            var at in new[]
            {
                crossing.AsOf,
                crossing.AsOf.AddDays(100),
                DateTimeOffset.MaxValue,
                DateTimeOffset.MinValue,
            }
        )
        {
            crossing.ChanceBefore(at).ShouldBeInRange(0, 1);
            crossing.ChanceUnseenBefore(at).ShouldBeInRange(0, 1);
        }
    }

    private static void Look(FirstCrossing first)
    {
        first.ChanceOfNone.ShouldBeInRange(0, 1);
        first.Shares.ShouldAllBe(share => share.Chance >= 0 && share.Chance <= 1);
        first.TryAt(0.5, out _);
    }

    private static void Look(NextSample next) => next.ChanceUnseen.ShouldBeInRange(0, 1);
}
