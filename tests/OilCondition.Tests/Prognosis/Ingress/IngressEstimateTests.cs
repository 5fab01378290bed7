using OilCondition.Prognosis;
using OilCondition.Statistics;
using UnitsNet;
using Cause = OilCondition.Prognosis.IngressEstimate.IngressCause;

namespace OilCondition.Tests.Prognosis.Ingress;

/// <summary>All records are of the invented station. 1000 kg of oil that rise by 2 mg/kg a day take up 2 g, 0.002004 L at 20 °C.</summary>
public class IngressEstimateTests
{
    private static readonly DateTimeOffset Start = new(2025, 1, 6, 8, 0, 0, TimeSpan.Zero);

    private static readonly Mass Ton = Mass.FromKilograms(1000);

    private static MeasurandSeries Series(
        IReadOnlyList<double> days,
        IReadOnlyList<double> values,
        IReadOnlyList<Qualifier>? qualifiers = null
    ) =>
        MeasurandSeries.FromColumns(
            Measurands.WaterContent,
            [.. days.Select(day => Start.AddDays(day))],
            values,
            qualifiers
        );

    private static double[] Days(int count, double step = 10) => [.. Enumerable.Range(0, count).Select(i => step * i)];

    [Fact]
    public void A_steady_rise_by_hand()
    {
        var days = Days(6);
        var rising = IngressEstimate
            .Of(Series(days, [.. days.Select(day => 100 + 2 * day)]), Ton)
            .ShouldBeOfType<IngressEstimate.Rising>();

        rising.Rate.GramsPerDay.ShouldBe(2, 1e-9);
        rising.LitresPerDay.Contains(0.002 / 0.9982).ShouldBeTrue();
        rising.Count.ShouldBe(6);
        rising.Cause.ShouldBe(Cause.NotTold);
        rising.LevelsOff.ShouldBeFalse();
        rising.ToString().ShouldStartWith("2 mL of water a day (1.");
        rising.ToString().ShouldEndWith("leak and air are not told apart");
    }

    /// <summary>
    /// The interval of readings on one straight line is that of the method, not none: at 150 mg/kg (2.5² + (0.0357 · 150)²)^½ = 5.9 mg/kg, over Sxx = 17.5 · 100 d² 0.141 mg/kg a
    /// day, times t = 2.776. Weights move it by some per cent.
    /// </summary>
    [Fact]
    public void Lucky_readings_do_not_make_a_narrow_interval()
    {
        var days = Days(6);
        var rising = (IngressEstimate.Rising)
            IngressEstimate.Of(Series(days, [.. days.Select(day => 100 + 2 * day)]), Ton);

        (rising.LitresPerDay.Upper!.Value - rising.LitresPerDay.Lower!.Value).ShouldBe(
            2 * 2.776 * 0.141e-3 / 0.9982,
            1.2e-4
        );
    }

    /// <summary>Second route: where the level hardly moves the weights are equal, and the line is that of least squares.</summary>
    [Fact]
    public void The_line_is_that_of_least_squares_where_weights_are_equal()
    {
        double[] days = [0, 12, 19, 33, 41, 58, 71];
        double[] values = [1003, 1041, 1030, 1075, 1092, 1101, 1150];
        var rising = (IngressEstimate.Rising)IngressEstimate.Of(Series(days, values), Ton);

        rising.Rate.GramsPerDay.ShouldBe(StraightLine.Fit(days, values).Slope, 0.02);
    }

    /// <summary>
    /// The interval of 95 % holds the true rate in 90 to 99 % of 400 runs, for few and many readings and for scatter of either kind: 6 mg/kg, 10 %, or both.
    /// </summary>
    [Theory]
    [InlineData(3, 6, 0)]
    [InlineData(4, 3, 0.1)]
    [InlineData(6, 0, 0.1)]
    [InlineData(10, 6, 0)]
    [InlineData(10, 3, 0.1)]
    [InlineData(30, 0, 0.1)]
    [InlineData(30, 15, 0)]
    public void The_interval_holds_the_true_rate(int count, double absolute, double relative)
    {
        const int Runs = 400;
        var random = new Random(2026);
        double Normal() =>
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var hits = 0;
        for (var run = 0; run < Runs; run++)
        {
            double[] days =
            [
                .. Enumerable.Range(0, count).Select(i => 180.0 * (i + 0.6 * random.NextDouble()) / count),
            ];
            double[] values =
            [
                .. days.Select(day =>
                {
                    var level = 60 + day;
                    return Math.Max(
                        0,
                        level + Math.Sqrt(absolute * absolute + Math.Pow(relative * level, 2)) * Normal()
                    );
                }),
            ];
            var interval = IngressEstimate.Of(Series(days, values), Ton) switch
            {
                IngressEstimate.Rising rising => rising.LitresPerDay,
                IngressEstimate.NoRiseShown none => none.LitresPerDay,
                _ => throw new InvalidOperationException(),
            };
            hits += interval.Contains(1e-3 / 0.9982) ? 1 : 0;
        }

        ((double)hits / Runs).ShouldBeInRange(0.9, count > 3 ? 0.99 : 1);
    }

    /// <summary>Oil that takes up nothing is said to rise in 1 to 4 % of 400 runs: one end of an interval of 95 %.</summary>
    [Theory]
    [InlineData(4)]
    [InlineData(10)]
    [InlineData(30)]
    public void Scatter_alone_is_seldom_taken_for_a_rise(int count)
    {
        const int Runs = 400;
        var random = new Random(11);
        double Normal() =>
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var rises = Enumerable
            .Range(0, Runs)
            .Count(_ =>
                IngressEstimate.Of(Series(Days(count), [.. Days(count).Select(_ => 120 + 12 * Normal())]), Ton)
                is IngressEstimate.Rising
            );

        ((double)rises / Runs).ShouldBeInRange(0.005, 0.045);
    }

    [Fact]
    public void Oil_that_stays_as_it_is_shows_no_rise_and_how_much_may_come_in_unseen()
    {
        var none = IngressEstimate
            .Of(Series(Days(8), [90, 94, 88, 91, 93, 89, 92, 90]), Ton)
            .ShouldBeOfType<IngressEstimate.NoRiseShown>();

        none.LitresPerDay.Lower!.Value.ShouldBeLessThan(0);
        none.LitresPerDay.Upper!.Value.ShouldBeGreaterThan(0);
        none.ToString().ShouldStartWith("no rise shown: ");
    }

    [Fact]
    public void Two_readings_or_one_moment_are_too_few()
    {
        IngressEstimate.Of(Series([0, 10], [50, 90]), Ton).ShouldBeOfType<IngressEstimate.TooFewReadings>();
        IngressEstimate.Of(Series([], []), Ton).ToString().ShouldBe("too few readings: 0");
        IngressEstimate
            .Of(Series([5, 5, 5, 5], [50, 90, 70, 60]), Ton)
            .ShouldBeOfType<IngressEstimate.TooFewReadings>();
    }

    [Fact]
    public void A_sensor_at_saturation_has_reached_its_ceiling()
    {
        var more = Qualifier.GreaterThan;
        var plain = Qualifier.None;
        var at = IngressEstimate
            .Of(Series(Days(7), [50, 70, 90, 110, 120, 120, 120], [plain, plain, plain, plain, more, more, more]), Ton)
            .ShouldBeOfType<IngressEstimate.AtCeiling>();

        at.Since.ShouldBe(Start.AddDays(40));
        at.LitresPerDay.Contains(0.002 / 0.9982).ShouldBeTrue();
        at.Count.ShouldBe(4);
        at.ToString().ShouldStartWith("dissolved water at its ceiling since 2025-02-15: titrate; before it ");

        // One bound among plain readings is no ceiling.
        IngressEstimate
            .Of(Series(Days(5), [50, 70, 90, 110, 130], [plain, plain, more, plain, plain]), Ton)
            .ShouldBeOfType<IngressEstimate.Rising>()
            .Count.ShouldBe(4);
    }

    [Fact]
    public void What_the_air_cannot_bring_is_a_leak()
    {
        var days = Days(10);
        var series = Series(days, [.. days.Select(day => 100 + 3 * day)]);

        // 370 mg/kg in the end: air that holds the oil at 150 cannot have brought them, nor a breath of 1 g a day.
        Told(MassFraction.FromPartsPerMillion(150)).ShouldBe(Cause.Leak);
        Told(breathed: MassFlow.FromGramsPerHour(1.0 / 24)).ShouldBe(Cause.Leak);
        Told(MassFraction.FromPartsPerMillion(800)).ShouldBe(Cause.NotTold);
        Told(breathed: MassFlow.FromGramsPerHour(1)).ShouldBe(Cause.NotTold);

        Cause Told(MassFraction? air = null, MassFlow? breathed = null) =>
            ((IngressEstimate.Rising)IngressEstimate.Of(series, Ton, air, breathed)).Cause;
    }

    [Fact]
    public void A_rise_that_levels_off_below_what_the_air_holds_is_of_the_air()
    {
        var days = Days(16, 5);
        double[] scatter = [2, -3, 4, -1, -4, 3, 0, -2, 5, -3, 1, 4, -5, 2, -1, 0];
        var series = Series(days, [.. days.Select((day, i) => 200 - 150 * Math.Exp(-day / 30) + scatter[i])]);
        var rising = (IngressEstimate.Rising)
            IngressEstimate.Of(series, Ton, mostByAir: MassFraction.FromPartsPerMillion(260));

        rising.LevelsOff.ShouldBeTrue();
        rising.Cause.ShouldBe(Cause.Air);
        rising.ToString().ShouldEndWith("levelling off: as the air would bring it");
    }

    [Fact]
    public void Stretches_between_treatments_share_a_slope_unless_theirs_differ()
    {
        var dehydration = new TreatmentRun(
            Start.AddDays(100),
            Start.AddDays(110),
            TreatmentKind.VacuumDehydration,
            Measurands.WaterContent,
            50
        );
        double Same(double day) => day <= 100 ? 100 + 2 * day : 50 + 2 * (day - 110);
        double Faster(double day) => day <= 100 ? 100 + 0.5 * day : 50 + 4 * (day - 110);
        var asOf = Start.AddDays(220);

        var shared = (IngressEstimate.Rising)IngressEstimate.Of(History(Same, dehydration), Density870, asOf);
        var latest = (IngressEstimate.Rising)IngressEstimate.Of(History(Faster, dehydration), Density870, asOf);

        // Pooled readings tell more than those of the latest stretch alone.
        shared.Stretches.Count.ShouldBe(2);
        shared.Rate.GramsPerDay.ShouldBe(2 * 0.87, 0.05);
        latest.Stretches.Count.ShouldBe(1);
        latest.Rate.GramsPerDay.ShouldBe(4 * 0.87, 0.1);

        // Once a leak sprang in between: the scatter of that stretch says nothing of the next one.
        double Sprang(double day) =>
            day <= 50 ? 100
            : day <= 100 ? 900
            : Same(day);
        var after = (IngressEstimate.Rising)IngressEstimate.Of(History(Sprang, dehydration), Density870, asOf);
        after.Stretches.Count.ShouldBe(1);
        after.Rate.GramsPerDay.ShouldBe(2 * 0.87, 0.05);

        // A filter leaves the water: it parts nothing.
        var filter = new TreatmentRun(
            Start.AddDays(100),
            null,
            TreatmentKind.FineFiltration,
            Measurands.Particles6,
            100
        );
        IngressEstimate.Of(History(day => 100 + 2 * day, filter), Density870, asOf).Count.ShouldBe(21);

        // While a treatment runs there is no stretch.
        var running = new TreatmentRun(
            Start.AddDays(5),
            null,
            TreatmentKind.VacuumDehydration,
            Measurands.WaterContent,
            50
        );
        IngressEstimate.Of(History(Same, running), Density870, asOf).ShouldBeOfType<IngressEstimate.TooFewReadings>();
    }

    private static readonly Density Density870 = Density.FromKilogramsPerCubicMeter(870);

    /// <summary>A sample each ten days for 220 days, but for the days of the treatment; 1000 L of oil.</summary>
    private static OilHistory History(Func<double, double> water, OilEvent one)
    {
        var random = new Random(7);
        var machine = new Machine(
            "HP-X1",
            "invented",
            new Oil("invented", new Dictionary<Measurand, Reading>()),
            Volume.FromLiters(1000),
            Temperature.FromDegreesCelsius(45),
            Temperature.FromDegreesCelsius(15)
        );
        var samples = Enumerable
            .Range(0, 23)
            .Select(i => 10.0 * i)
            .Where(day => day is < 100 or > 110)
            .Select(day => new OilSample(
                $"S{day}",
                Start.AddDays(day),
                new Dictionary<Measurand, Reading>
                {
                    [Measurands.WaterContent] = new(water(day) + 2 * (random.NextDouble() - 0.5)),
                }
            ));
        return OilHistory.Create(machine, samples, [], [one]);
    }

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        var series = Series(Days(4), [50, 60, 70, 80]);
        var acid = MeasurandSeries.FromColumns(Measurands.AcidNumber, [Start], [0.1]);

        Should.Throw<ArgumentException>(() => IngressEstimate.Of(acid, Ton)).ParamName.ShouldBe("series");
        Should
            .Throw<ArgumentOutOfRangeException>(() => IngressEstimate.Of(series, Mass.Zero))
            .ParamName.ShouldBe("oilMass");
        Should
            .Throw<ArgumentOutOfRangeException>(() => IngressEstimate.Of(series, Ton, confidence: 1))
            .ParamName.ShouldBe("confidence");
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                IngressEstimate.Of(series, Ton, mostByBreathing: MassFlow.FromKilogramsPerHour(-1))
            )
            .ParamName.ShouldBe("mostByBreathing");
        Should.Throw<ArgumentNullException>(() => IngressEstimate.Of((OilHistory)null!, Density870, Start));
    }

    /// <summary>Whatever the figures, an end is a finite number, and a rise has a lower end above 0.</summary>
    [Fact]
    public void Odd_columns_give_a_named_outcome()
    {
        IngressEstimate[] all =
        [
            IngressEstimate.Of(Series(Days(5), [0, 0, 0, 0, 0]), Ton),
            IngressEstimate.Of(Series(Days(5), [500_000, 500_000, 500_000, 500_000, 0]), Ton),
            IngressEstimate.Of(Series([0, 1e-7, 2e-7, 50], [1, 2, 3, 4]), Ton),
            IngressEstimate.Of(Series([0, 1, 2, 60_000], [10, 10, 10, 400_000]), Ton),
        ];

        all.ShouldAllBe(one => one is IngressEstimate.Rising || one is IngressEstimate.NoRiseShown);
    }
}
