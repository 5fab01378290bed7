using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>The whole family: weights, what a prior and a test method do to it, and the chance that it gives.</summary>
public class DegradationTests
{
    private const double Latest = 10000;
    private static readonly double[] Times = [0, 31, 58, 95, 121, 160, 171, 214, 260, 281];
    private static readonly double[] Values = [0.10, 0.13, 0.11, 0.16, 0.19, 0.18, 0.20, 0.21, 0.26, 0.25];

    /// <summary>
    /// Growth read exactly and often lies between the courses of the family, and is likelier than each of them by thousands in the logarithm: the
    /// weights stay numbers, and the crossing at 1.2 spans is found.
    /// </summary>
    [Fact]
    public void Growth_between_the_courses_of_the_family_is_found_however_exactly_it_is_read()
    {
        var random = new Random(5);
        double[] times = [.. Enumerable.Range(0, 300).Select(i => i / 299.0)];
        double[] values = [.. times.Select(t => Math.Exp(3.16 * t) + 1e-4 * DecayNoiseSource.Normal(random))];

        var fit = Degradation.Fit(times, values);

        fit.Weights.Sum().ShouldBe(1, 1e-9);
        var law = fit.Above(Math.Exp(3.16 * 1.2), 100);
        law.TryTime(0.5, 0, out var expected).ShouldBeTrue();
        expected.ShouldBe(0.2, 0.004);
    }

    /// <summary>Few exact readings, whose sums of squares differ by many powers of ten from one course of the family to the next: the course between them is found as well.</summary>
    [Fact]
    public void An_exact_course_between_those_of_the_family_is_found_from_few_readings()
    {
        foreach (var count in new[] { 6, 8, 10, 12, 16, 24, 40 })
        {
            double[] times = [.. Enumerable.Range(0, count).Select(i => i / (count - 1.0))];
            for (var bend = 0.15; bend < 0.8; bend += 0.01)
            {
                var course = Course.Runaway(1 / bend);
                double[] values = [.. times.Select(course.At)];

                var law = Degradation.Fit(times, values).Above(course.At(1.1), Latest);

                law.TryTime(0.5, 0, out var expected).ShouldBeTrue();
                expected.ShouldBe(0.1, 0.001, $"{count} readings, bend {bend}");
            }
        }
    }

    /// <summary>
    /// Courses that pass all readings within their error are equally likely, but for rounding, which must not choose among them: readings that differ in their last
    /// digit have the same forecast.
    /// </summary>
    [Fact]
    public void Rounding_moves_no_chance_where_several_courses_lie_within_the_error_of_a_reading()
    {
        var random = new Random(4);
        for (var example = 0; example < 200; example++)
        {
            double[] times = [.. Enumerable.Range(0, random.Next(20, 60)).Select(i => i * 20.0)];
            var rate = 1 + 6 * random.NextDouble();
            double[] values = [.. times.Select(t => (Math.Exp(rate * t / times[^1]) - 1) / (Math.Exp(rate) - 1))];
            double[] moved = [.. values.Select(value => value * (1 + 1e-14 * (random.NextDouble() - 0.5)))];
            var error = Math.Pow(10, -3 + 2 * random.NextDouble());

            var law = Degradation.Fit(times, values, readingError: error).Above(1.6, Latest);
            var other = Degradation.Fit(times, moved, readingError: error).Above(1.6, Latest);

            foreach (var part in new[] { 0.02, 0.05, 0.1, 0.2, 0.4 })
            {
                var chance = law.ChanceBefore(part * times[^1]);
                other.ChanceBefore(part * times[^1]).ShouldBe(chance, 1e-7, $"example {example}, {part} spans ahead");
            }
        }
    }

    /// <summary>Multiples of 2^-22 over a range of 2^-14, which nothing rounds on top of 128 either.</summary>
    [Fact]
    public void A_level_far_above_the_scatter_moves_no_chance()
    {
        var random = new Random(6);
        double[] values = [.. Times.Select(_ => Math.Pow(2, -22) * random.Next(0, 256))];
        var limit = Math.Pow(2, -14) * 1.5;

        var low = Degradation.Fit(Times, values).Above(limit, Latest);
        var high = Degradation.Fit(Times, [.. values.Select(value => 128 + value)]).Above(128 + limit, Latest);

        foreach (var days in new[] { 30, 100, 300, 1000 })
        {
            high.ChanceBefore(days).ShouldBe(low.ChanceBefore(days), 1e-6, $"{days} days");
        }
    }

    [Fact]
    public void Weights_are_prior_times_likelihood_with_dense_matrices()
    {
        var fit = Degradation.Fit(Times, Values);
        var dense = Dense(Times, Values);
        double[] logs =
        [
            .. dense.Select((one, m) => one.LogLikelihood + Math.Log(DegradationPrior.Default.Weights[m])),
        ];
        var sum = logs.Sum(log => Math.Exp(log - logs.Max()));
        for (var m = 0; m < logs.Length; m++)
        {
            fit.Weights[m].ShouldBe(Math.Exp(logs[m] - logs.Max()) / sum, 1e-7);
        }

        fit.Weights.Sum().ShouldBe(1, 1e-12);
        fit.Drift.ShouldBe(dense.Select((one, m) => fit.Weights[m] * one.Drift).Sum() / 281, 1e-9);
    }

    [Theory]
    [InlineData(0.30, 0.012)]
    [InlineData(0.27, 0.012)]
    [InlineData(0.45, 0.012)]
    [InlineData(-0.22, 0.005)]
    [InlineData(-0.17, 0.005)]
    public void The_chance_is_that_of_simulated_states(double limit, double error)
    {
        // Second route: a movement drawn by its weight, scatter and state from the dense matrices; of a walk read without error first passage with drift and
        // scatter drawn. A limit below 0 is one from which the mirrored readings move away.
        var random = new Random(20260501);
        double[] values = [.. Values.Select(value => limit > 0 ? value : -value)];
        var fit = Degradation.Fit(Times, values);
        var law = fit.Above(limit, Latest);
        var dense = Dense(Times, values);
        double[] days = [20, 60, 150, 400];
        var beyond = new double[days.Length];
        double atStart = 0;
        const int Draws = 20000;
        for (var draw = 0; draw < Draws; draw++)
        {
            var m = Pick(fit.Weights, random);
            var movement = DegradationPrior.Family[m];
            var variance =
                dense[m].Squares
                / Enumerable
                    .Range(0, (int)dense[m].DegreesOfFreedom)
                    .Sum(_ => Math.Pow(DecayNoiseSource.Normal(random), 2));
            var isWalk = movement.Ratio == Movement.PureWalk;
            var z = DecayNoiseSource.Normal(random);
            atStart += Beyond(0) ? 1 : 0;
            for (var i = 0; i < days.Length; i++)
            {
                var x = movement.Course.At(1 + days[i] / 281) - 1;
                beyond[i] +=
                    isWalk
                        ? FirstPassage.ChanceBefore(
                            limit - values[^1],
                            dense[m].Drift + z * Math.Sqrt(variance / dense[m].Information[1, 1]),
                            Math.Sqrt(variance * 9),
                            x
                        )
                    : Beyond(x) ? 1
                    : 0;
            }

            bool Beyond(double x)
            {
                if (isWalk && x == 0)
                {
                    return false;
                }

                var (mean, spread) = dense[m].StateAfter(x);
                return mean + z * Math.Sqrt(variance * spread) > limit;
            }
        }

        var start = atStart / Draws;
        for (var i = 0; i < days.Length; i++)
        {
            // The table of the law, movements of next to no weight, and the error of the simulation.
            law.ChanceBefore(days[i])
                .ShouldBe(Math.Max(0, beyond[i] / Draws - start) / (1 - start), error, $"{days[i]} d");
        }
    }

    [Fact]
    public void The_default_prior_is_a_distribution_over_every_kind_of_movement()
    {
        DegradationPrior.Default.Weights.Count.ShouldBe(DegradationPrior.Family.Length);
        DegradationPrior.Default.Weights.Sum().ShouldBe(1, 1e-12);
        DegradationPrior.Default.Weights.ShouldAllBe(weight => weight > 0);
        DegradationPrior.Family.Select(one => one.Kind).Distinct().Count().ShouldBe(3);
        DegradationPrior.Family.Select(one => one.Course.Shape).Distinct().Count().ShouldBe(4);
        DegradationPrior.Family.Distinct().Count().ShouldBe(DegradationPrior.Family.Length);
        DegradationPrior.Default.Lesson.ShouldBeNull();

        // The most cautious model is one of the family.
        var only = DegradationPrior.RandomWalk.Weights.Select((weight, m) => (weight, m)).Single(one => one.weight > 0);
        only.weight.ShouldBe(1);
        DegradationPrior.Family[only.m].ShouldBe(new Movement(MovementKind.Moving, Course.Straight, Movement.PureWalk));
    }

    [Fact]
    public void Many_readings_find_what_made_them()
    {
        var random = new Random(3);
        double[] times = [.. Enumerable.Range(0, 48).Select(i => (double)i)];
        double Weight(Func<double, double> mean, double noise, Func<Movement, bool> of)
        {
            var fit = Degradation.Fit(
                times,
                [.. times.Select(t => mean(t / 47) + noise * DecayNoiseSource.Normal(random))]
            );
            return DegradationPrior.Family.Select((one, m) => of(one) ? fit.Weights[m] : 0).Sum();
        }

        Weight(_ => 5, 1, one => one.Kind == MovementKind.Still).ShouldBeGreaterThan(0.5);
        Weight(u => u, 0.05, one => one.Course == Course.Straight).ShouldBeGreaterThan(0.5);
        Weight(u => (Math.Exp(4 * u) - 1) / (Math.Exp(4) - 1), 0.01, Accelerates).ShouldBeGreaterThan(0.9);
        Weight(
                u => 1 - Math.Exp(-3 * u),
                0.01,
                one =>
                    one.Kind == MovementKind.DriftWalks
                    || one.Course is { Shape: CourseShape.Exponential, Parameter: < 0 }
            )
            .ShouldBeGreaterThan(0.99);
        double state = 0;
        Weight(_ => state += 1 + 3 * DecayNoiseSource.Normal(random), 0, one => one.Ratio >= 3)
            .ShouldBeGreaterThan(0.9);

        static bool Accelerates(Movement one) =>
            one.Kind == MovementKind.DriftWalks
            || one.Course.Shape is CourseShape.Quadratic or CourseShape.Runaway
            || one.Course is { Shape: CourseShape.Exponential, Parameter: > 0 };
    }

    [Fact]
    public void What_a_fleet_taught_enters_every_movement_and_the_drift_of_the_straight_ones()
    {
        // Second route: sums of squares and normal densities from the dense matrices.
        var prior = Taught(8, (_, random) => 0.0008 + 0.0001 * DecayNoiseSource.Normal(random));
        var lesson = prior.Lesson.ShouldNotBeNull();
        var fit = Degradation.Fit(Times, Values, prior);
        var dense = Dense(Times, Values);
        for (var m = 0; m < dense.Length; m++)
        {
            var movement = DegradationPrior.Family[m];
            var (scale2, freedom) = lesson.Scatter[m];
            var pooled = (dense[m].Squares + freedom * scale2) / (dense[m].DegreesOfFreedom + freedom);
            var own = dense[m].Drift;
            var expected = own;
            if (movement.Kind == MovementKind.Moving && movement.Course == Course.Straight)
            {
                var precision = dense[m].Information.Inverse()[1, 1];
                var known = 1 / Math.Pow(281 * lesson.DriftStandardDeviation, 2);
                expected =
                    (own / (pooled * precision) + 281 * lesson.Drift * known) / (1 / (pooled * precision) + known);
            }

            fit.Member(m).Scale2.ShouldBe(pooled, 1e-7 * pooled, $"{movement}");
            fit.Member(m).Drift.ShouldBe(expected, 1e-7, $"{movement}");
        }

        // Three readings have a scatter to be judged by.
        Degradation.Fit(Times.AsSpan(0, 3), Values.AsSpan(0, 3), prior).IsDetermined.ShouldBeTrue();
        Degradation.Fit(Times.AsSpan(0, 3), Values.AsSpan(0, 3)).IsDetermined.ShouldBeFalse();
    }

    [Fact]
    public void A_fleet_teaches_its_drift_with_the_spread_of_one_more_machine()
    {
        // Mean and standard deviation of six drifts by hand, times sqrt((1 + 1/6) 5/3): Student's prediction of a seventh.
        var fits = Fits(6, (i, _) => new[] { 1, 2, 3, 4, 5, 9 }[i] * 1e-3, 1e-9);
        var lesson = DegradationFleet.Learn(fits).Lesson.ShouldNotBeNull();
        lesson.Drift.ShouldBe(4e-3, 1e-8);
        lesson.DriftStandardDeviation.ShouldBe(1e-3 * Math.Sqrt(40.0 / 5 * (7.0 / 6) * 5 / 3), 1e-8);
        DegradationFleet.Learn(fits).Weights.Sum().ShouldBe(1, 1e-9);
    }

    [Fact]
    public void A_fleet_teaches_its_scatter_with_the_freedom_by_which_it_varies()
    {
        // Machines of 10 readings whose σ² is χ²/ν times 1e-4. Their mean squares vary by (1 + 2/ν)(1 + 2/9) − 1; less 2/9 this is (2/ν) 11/9, so that 4.1
        // comes back for 5: a little to the wide side. 2 and 30 are the ends.
        foreach (var (freedom, least, most) in new[] { (5, 3.4, 4.8), (1, 2, 2), (100000, 25, 30) })
        {
            var fits = Fits(
                2000,
                (_, _) => 0,
                0.01,
                random =>
                    freedom > 1000
                        ? 1
                        : Math.Sqrt(
                            Enumerable.Range(0, freedom).Sum(_ => Math.Pow(DecayNoiseSource.Normal(random), 2))
                                / freedom
                        )
            );
            var (scale2, learnt) = DegradationFleet.Learn(fits).Lesson!.Scatter[0];
            scale2.ShouldBe(1e-4, freedom == 1 ? 3e-5 : 1e-5);
            learnt.ShouldBeInRange(least, most, $"{freedom}");
        }
    }

    [Fact]
    public void Identical_series_and_too_few_teach_nothing()
    {
        var one = Degradation.Fit(Times, Values);
        DegradationFleet.Learn([one, one, one, one, one]).ShouldBe(DegradationPrior.Default);
        DegradationFleet.Learn(Fits(3, (i, _) => i, 1)).ShouldBe(DegradationPrior.Default);
        DegradationFleet
            .Learn([.. Fits(3, (i, _) => i, 1), Degradation.Fit([0, 1], [0, 1])])
            .ShouldBe(DegradationPrior.Default);
    }

    [Fact]
    public void A_fleet_of_growths_makes_growth_likelier()
    {
        var fits = Enumerable
            .Range(1, 8)
            .Select(i => Degradation.Fit(Times, [.. Times.Select((t, k) => i * Math.Exp(t / 100) + 0.01 * (k % 3))]))
            .ToList();
        var taught = DegradationFleet.Learn(fits);
        double Growth(DegradationPrior prior) =>
            prior
                .Weights.Select(
                    (weight, m) =>
                        DegradationPrior.Family[m].Course is { Shape: CourseShape.Exponential, Parameter: > 0 }
                            ? weight
                            : 0
                )
                .Sum();
        Growth(taught).ShouldBeGreaterThan(2 * Growth(DegradationPrior.Default));
    }

    [Fact]
    public void The_error_of_the_method_leaves_room_for_a_walk_only_beyond_itself()
    {
        // Steps of ±0.1: mean square 0.01. With an error of 0.1 two errors explain them twice over; with 0.06 there is room for 0.01/0.0036 − 2 = 0.78 of the
        // variance of an error, with 0.04 for 4.25.
        double[] times = [0, 1, 2, 3, 4, 5, 6, 7];
        double[] values = [5, 5.1, 5, 5.1, 5.2, 5.1, 5.2, 5.3];
        double Walks(double error, Func<double, bool> ratio)
        {
            var fit = Degradation.Fit(times, values, readingError: error);
            fit.Weights.Sum().ShouldBe(1, 1e-12);
            return DegradationPrior
                .Family.Select((one, m) => one.Kind != MovementKind.DriftWalks && ratio(one.Ratio) ? fit.Weights[m] : 0)
                .Sum();
        }

        Walks(0.1, ratio => ratio > 0).ShouldBe(0);
        Walks(0.06, ratio => ratio == 0.3).ShouldBeGreaterThan(0);
        Walks(0.06, ratio => ratio > 0.3).ShouldBe(0);
        Walks(0.045, ratio => ratio > 0.3).ShouldBe(0); // room for 2.94
        Walks(0.04, ratio => ratio == 3).ShouldBeGreaterThan(0);
        Walks(0.04, ratio => ratio == Movement.PureWalk).ShouldBeGreaterThan(0);

        // What was a walk without error is one with error.
        var walk = Array.IndexOf(
            DegradationPrior.Family,
            new Movement(MovementKind.Moving, Course.Straight, Movement.PureWalk)
        );
        Degradation.Fit(times, values).Member(walk).FreeWalk.ShouldBeGreaterThan(0);
        var read = Degradation.Fit(times, values, readingError: 0.04).Member(walk);
        read.FreeWalk.ShouldBe(0);
        read.V0.ShouldBeGreaterThan(0);
        (read.Scale2 / 5.25).ShouldBeGreaterThanOrEqualTo(0.0016 * (1 - 1e-12)); // 1/(1 + 4.25) of s² is a reading's
    }

    [Fact]
    public void Readings_at_one_time_count_as_their_mean()
    {
        var twice = Degradation.Fit([0, 1, 1, 2, 3, 4], [1, 2, 3, 3.1, 4, 5.2]);
        var mean = Degradation.Fit([0, 1, 2, 3, 4], [1, 2.5, 3.1, 4, 5.2]);

        twice.Count.ShouldBe(5);
        twice.Above(9, Latest).ChanceBefore(4).ShouldBe(mean.Above(9, Latest).ChanceBefore(4), 1e-12);
    }

    [Fact]
    public void Too_few_readings_and_wrong_input_are_named()
    {
        Degradation.Fit([0, 1, 2], [1, 2, 3]).IsDetermined.ShouldBeFalse();
        Degradation.Fit([], []).IsDetermined.ShouldBeFalse();
        Degradation.Fit([5, 5, 5, 5, 5], [1, 2, 3, 4, 5]).IsDetermined.ShouldBeFalse();
        Should.Throw<InvalidOperationException>(() => Degradation.Fit([0, 1], [1, 2]).Above(3, Latest));
        Should.Throw<ArgumentException>(() => Degradation.Fit([0, 2, 1, 3], [1, 2, 3, 4])).ParamName.ShouldBe("times");
        Should.Throw<ArgumentOutOfRangeException>(() => Degradation.Fit([0, 1, 2, 3], [1, 2, double.NaN, 4]));
        Should.Throw<ArgumentOutOfRangeException>(() => Degradation.Fit([0, 1, 2, 3], [1, 2, 1e200, 4]));
        Should.Throw<ArgumentOutOfRangeException>(() => Degradation.Fit(Times, Values).Above(double.NaN, Latest));
    }

    [Fact]
    public void Readings_without_any_scatter_cross_when_their_line_does()
    {
        var law = Degradation.Fit([0, 1, 2, 3, 4], [0, 1, 2, 3, 4]).Above(10, Latest);
        law.ChanceBefore(5.99).ShouldBeLessThan(1e-3);
        law.ChanceBefore(6.01).ShouldBeGreaterThan(1 - 1e-3);

        var flat = Degradation.Fit([0, 1, 2, 3, 4], [7, 7, 7, 7, 7]).Above(10, Latest);
        flat.ChanceBefore(Latest).ShouldBeLessThan(1e-3);
    }

    private static DenseMember[] Dense(double[] times, double[] values) =>
        Array.ConvertAll(
            DegradationPrior.Family,
            movement => new DenseMember(
                movement,
                Array.ConvertAll(times, t => movement.Course.At((t - times[0]) / (times[^1] - times[0]))),
                values
            )
        );

    private static DegradationPrior Taught(int machines, Func<int, Random, double> drift) =>
        DegradationFleet.Learn(Fits(machines, drift, 0.01));

    private static List<DegradationFit> Fits(
        int machines,
        Func<int, Random, double> drift,
        double noise,
        Func<Random, double>? factor = null
    )
    {
        var random = new Random(8);
        return
        [
            .. Enumerable
                .Range(0, machines)
                .Select(i =>
                {
                    var (one, size) = (drift(i, random), noise * (factor?.Invoke(random) ?? 1));
                    return Degradation.Fit(
                        Times,
                        [.. Times.Select(t => one * t + size * DecayNoiseSource.Normal(random))]
                    );
                }),
        ];
    }

    private static int Pick(IReadOnlyList<double> weights, Random random)
    {
        var left = random.NextDouble();
        for (var m = 0; m < weights.Count; m++)
        {
            left -= weights[m];
            if (left <= 0)
            {
                return m;
            }
        }

        return weights.Count - 1;
    }
}
