using CsCheck;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Sampling;

public class SeriesTrendTests
{
    private static MeasurandSeries Series(Measurand measurand, params Reading[] readings) =>
        Invented
            .History(readings.Select((reading, i) => Invented.Sample(i, 30 * i, (measurand, reading))))
            .SampleSeries(measurand, Invented.Start, Invented.Start.AddDays(2000));

    private static Reading[] Values(params double[] values) => [.. values.Select(value => new Reading(value))];

    [Fact]
    public void A_rise_is_seen_with_its_slope_per_day()
    {
        var readings = Values([.. Enumerable.Range(0, 12).Select(i => 10 + 3 * i + 0.5 * (i % 3))]);
        var trend = SeriesTrend.Of(Series(Measurands.Iron, readings));

        trend.Assessment.Verdict.ShouldBe(TrendVerdict.Rising);
        trend.Assessment.Slope.ShouldBe(0.1, 0.005); // 3 per 30 days
    }

    [Fact]
    public void A_wild_reading_is_set_aside_kept_and_named()
    {
        double[] values = [10, 11, 10.5, 9.8, 10.2, 60, 10.4, 9.9, 10.1, 10.6, 9.7, 10.3];
        var trend = SeriesTrend.Of(Series(Measurands.Iron, Values(values)));

        trend.Judged.Points.Count.ShouldBe(11);
        var aside = trend.Judged.LeftOut.Single();
        aside.LeftOut.ShouldBe(LeftOutReason.Wild);
        aside.Reading.Value.ShouldBe(60);
        trend.Series.Points.Count.ShouldBe(12);
    }

    [Fact]
    public void After_a_sudden_change_the_trend_starts_anew()
    {
        double[] values = [50, 51, 49.5, 50.4, 49.7, 50.2, 50.6, 20, 21, 19.6, 20.5, 19.9, 20.3, 20.8];
        var trend = SeriesTrend.Of(Series(Measurands.AcidNumber, Values(values)));

        trend.Judged.Points.Count.ShouldBe(7);
        trend.Judged.LeftOut.Select(left => left.LeftOut!.Value).Distinct().ShouldBe([LeftOutReason.BeforeChange]);
        trend.Assessment.Verdict.ShouldBe(TrendVerdict.NoTrend);
    }

    [Fact]
    public void Counts_are_judged_on_the_logarithmic_scale_and_bounds_as_bounds()
    {
        var growing = Values([.. Enumerable.Range(0, 10).Select(i => 100 * Math.Pow(1.2, i))]);
        var counts = SeriesTrend.Of(Series(Measurands.Particles4, growing));
        counts.Assessment.Scale.ShouldBe(NaturalScale.Logarithmic);
        counts.Assessment.Slope.ShouldBe(Math.Log(1.2) / 30, 1e-9);

        Reading[] metals = [.. Enumerable.Repeat(new Reading(1, Qualifier.LessThan), 4), .. Values(2, 3, 4, 5, 6, 7)];
        var bounded = SeriesTrend.Of(Series(Measurands.Tin, metals));
        bounded.Assessment.Verdict.ShouldBe(TrendVerdict.Rising);
        bounded.Assessment.Reasons.ShouldContain(TrendReason.CensoredReadings);
        bounded.Judged.Points.Count.ShouldBe(10);
    }

    [Fact]
    public void Over_oil_hours_the_trend_is_one_of_running()
    {
        var samples = Enumerable
            .Range(0, 10)
            .Select(i =>
            {
                double hours = i < 5 ? 500 * i : 2000 + 10 * (i - 4);
                return Invented.Sample(
                    i,
                    30 * i,
                    (Measurands.Iron, new Reading(10 + hours / 100 + 0.1 * (i % 2))),
                    (Measurands.OilHours, new Reading(hours))
                );
            });
        Invented
            .History(samples)
            .SampleSeries(Measurands.Iron, Invented.Start, Invented.Start.AddDays(999))
            .TryOnOilHours(out var onHours)
            .ShouldBeTrue();
        var trend = SeriesTrend.Of(onHours!, new TrendOptions(changeSignificance: null));

        (trend.Assessment.Slope / onHours!.OilHoursPerDay!.Value).ShouldBe(0.01, 0.0002); // 1 mg/kg per 100 h
    }

    [Fact]
    public void Reversed_time_flips_the_sign_of_a_trend_by_ranks_and_changes_nothing_else()
    {
        var byRanks = 0;
        Gen.Select(Gen.Int[1, 40].Array[4, 25], Gen.Int[-30, 30], Gen.Int[0, 20], Gen.Int[0, 100_000], Gen.Bool)
            .Holds(
                (steps, slope, scatter, seed, counts) =>
                {
                    // Quarters of a mg/kg: ties stay ties. A sudden change and a wild reading are no mirror image: what is latest counts.
                    // Least squares ask whether a rise comes late or early, so that only ranks have a mirror image in time.
                    var random = new Random(seed);
                    var days = steps.Select((_, i) => steps.Take(i + 1).Sum()).ToArray();
                    var values = days.Select(day =>
                        Math.Max(0.25, 100 + (slope * day / 10 + random.Next(-scatter, scatter + 1)) / 4.0)
                    );
                    var readings = values
                        .Select(value => value < 99 ? new Reading(99, Qualifier.LessThan) : new Reading(value))
                        .ToArray();
                    var measurand = counts ? Measurands.Particles4 : Measurands.Iron;
                    var options = new TrendOptions(
                        counts ? NaturalScale.Logarithmic : NaturalScale.Linear,
                        changeSignificance: null,
                        outlierSignificance: null
                    );
                    SeriesTrend Of(Func<int, int> at) =>
                        SeriesTrend.Of(
                            Invented
                                .History(
                                    readings.Select(
                                        (reading, i) => Invented.Sample(i, at(days[i]), (measurand, reading))
                                    )
                                )
                                .SampleSeries(measurand, Invented.Start, Invented.Start.AddDays(5000)),
                            options
                        );
                    var (forward, back) = (Of(day => day), Of(day => 2000 - day));

                    back.Assessment.Method.ShouldBe(forward.Assessment.Method);
                    back.Judged.Points.Count.ShouldBe(forward.Judged.Points.Count);
                    if (forward.Assessment.Method != TrendMethod.TheilSen)
                    {
                        return;
                    }

                    byRanks++;
                    back.Assessment.Slope.ShouldBe(
                        -forward.Assessment.Slope,
                        1e-9 * (1 + Math.Abs(forward.Assessment.Slope))
                    );
                    back.Assessment.PValue.ShouldBe(forward.Assessment.PValue, 1e-9);
                    var mirrored = forward.Assessment.Verdict switch
                    {
                        TrendVerdict.Rising => TrendVerdict.Falling,
                        TrendVerdict.Falling => TrendVerdict.Rising,
                        var other => other,
                    };
                    back.Assessment.Verdict.ShouldBe(mirrored);
                },
                iter: 200
            );
        byRanks.ShouldBeGreaterThan(50);
    }

    [Fact]
    public void Two_readings_are_too_few() =>
        SeriesTrend.Of(Series(Measurands.Iron, Values(1, 2))).Assessment.Verdict.ShouldBe(TrendVerdict.TooFewReadings);
}
