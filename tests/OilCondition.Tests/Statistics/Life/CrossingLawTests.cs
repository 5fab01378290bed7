using CsCheck;
using MathNet.Numerics.Distributions;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics;

/// <summary>The table of a law against the law itself, and every question against the one that it is the inverse of.</summary>
public class CrossingLawTests
{
    private const double Latest = 1000;

    private static readonly Dictionary<string, Func<double, double>> Laws = new(StringComparer.Ordinal)
    {
        ["exponential"] = t => 1 - Math.Exp(-t / 20),
        ["normal, with a part at once"] = t => 0.05 + 0.95 * Normal.CDF(50, 10, t),
        ["sharp"] = t => Normal.CDF(300, 2, t),
        ["inverse Gaussian that may turn away"] = t => FirstPassage.ChanceBefore(20, -0.02, 1, t),
        ["Weibull of small shape"] = t => 1 - Math.Exp(-Math.Sqrt(t / 400)),
        ["rare"] = t => 0.004 * t / Latest,
    };

    public static TheoryData<string> Names() => [.. Laws.Keys];

    [Theory]
    [InlineData("exponential", 0.001)]
    [InlineData("normal, with a part at once", 0.01)]
    [InlineData("sharp", 0.001)]
    [InlineData("inverse Gaussian that may turn away", 0.001)]
    [InlineData("Weibull of small shape", 0.001)]
    [InlineData("rare", 0.001)]
    public void The_table_gives_the_law_back(string name, double error)
    {
        var truth = Laws[name];
        var times = new SortedSet<double>();
        var law = CrossingLaw.Of(time => times.Add(time) ? truth(time) : double.NaN, Latest);
        law.Latest.ShouldBe(Latest, 1e-9);
        var random = new Random(17);
        for (var i = 0; i < 2000; i++)
        {
            // Points are no more than a twelfth apart: a fourth of it where the law turns sharply, far less elsewhere.
            var time = Math.Exp(Math.Log(1e-3) + random.NextDouble() * Math.Log(1e6));
            var chance = law.ChanceBefore(time);
            chance.ShouldBe(truth(time), chance < 0.125 ? 4 * error : error, $"at {time}");
        }

        double[] chances = [.. times.Select(time => law.ChanceBefore(time))];
        chances
            .Zip(chances.Skip(1), (before, after) => after - before)
            .Max()
            .ShouldBeLessThanOrEqualTo(1 / 12.0 + 1e-7);
        chances.Length.ShouldBeLessThan(70);
        times.Skip(1).ShouldAllBe(time => Math.Abs(law.ChanceBefore(time) - truth(time)) < 1e-7);
    }

    [Fact]
    public void No_chance_falls_where_one_piece_meets_the_next()
    {
        // Gaps between the logarithms of times about 1, which are no single figures, are among them.
        for (var latest = 300.0; latest < 1300; latest += 1.7)
        {
            var times = new SortedSet<double>();
            var law = CrossingLaw.Of(time => times.Add(time) ? 1 - Math.Exp(-time / 2) : double.NaN, latest);
            foreach (var time in times.Take(times.Count - 1))
            {
                law.ChanceBefore(time * (1 - 1e-12)).ShouldBeLessThanOrEqualTo(law.ChanceBefore(time * (1 + 1e-12)));
            }
        }
    }

    [Fact]
    public void Below_an_eighth_the_chance_grows_evenly_with_the_logarithm_of_time()
    {
        var times = new SortedSet<double>();
        var law = CrossingLaw.Of(time => times.Add(time) ? Laws["exponential"](time) : double.NaN, Latest);
        double[] early = [.. times.Where(time => law.ChanceBefore(time) < 0.125)];
        early.Length.ShouldBeGreaterThan(5);
        for (var i = 1; i < early.Length; i++)
        {
            var (before, after) = (law.ChanceBefore(early[i - 1]), law.ChanceBefore(early[i]));
            var middle = Math.Sqrt(early[i - 1] * early[i]);
            if (i > 1)
            {
                law.ChanceBefore(middle).ShouldBe((before + after) / 2, 1e-9);
            }

            // The chord lies above: what happens early is rather told too early.
            law.ChanceBefore(middle).ShouldBeGreaterThanOrEqualTo(Laws["exponential"](middle) - 1e-9);
        }
    }

    [Fact]
    public void A_jump_is_found_to_a_ten_thousandth_of_its_time()
    {
        var law = CrossingLaw.Of(t => t < 37 ? 0 : 1, Latest);
        law.ChanceBefore(36.99).ShouldBe(0);
        law.ChanceBefore(37.01).ShouldBe(1);
        law.TryTime(0.5, 0, out var time).ShouldBeTrue();
        time.ShouldBe(37, 0.0037);
    }

    [Fact]
    public void Never_and_at_once_are_laws_too()
    {
        var never = CrossingLaw.Of(_ => 0, Latest);
        never.ChanceBefore(Latest).ShouldBe(0);
        never.ChanceBefore(1e9).ShouldBe(0);
        never.TryTime(0.01, 0, out var none).ShouldBeFalse();
        none.ShouldBe(0);

        var atOnce = CrossingLaw.Of(_ => 1, Latest);
        atOnce.ChanceBefore(0).ShouldBe(0); // at the last reading it is not crossed
        atOnce.ChanceBefore(1e-9).ShouldBe(1);
        atOnce.ChanceBefore(5, 2).ShouldBe(0); // not crossed by 2 contradicts it
        atOnce.TryTime(0.5, 0, out var now).ShouldBeTrue();
        now.ShouldBe(0);
        atOnce.TryTime(0.5, 2, out _).ShouldBeFalse();
    }

    [Fact]
    public void A_chance_that_falls_counts_as_staying()
    {
        // 0.6 by 10, down to 0.3 by 30, and on to 0.9: what has been passed has been passed.
        static double Wavy(double t) =>
            t < 10 ? 0.06 * t
            : t < 30 ? 0.6 - 0.015 * (t - 10)
            : Math.Min(0.9, 0.3 + 0.02 * (t - 30));
        var law = CrossingLaw.Of(Wavy, Latest);
        double highest = 0;
        double before = 0;
        for (var t = 0.05; t < 100; t += 0.05)
        {
            highest = Math.Max(highest, Wavy(t));
            var now = law.ChanceBefore(t);
            now.ShouldBeGreaterThanOrEqualTo(before);
            now.ShouldBe(highest, 0.04, $"at {t}");
            before = now;
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_time_of_a_chance_has_that_chance(string name)
    {
        var law = CrossingLaw.Of(Laws[name], Latest);
        foreach (var intact in new[] { 0, 0.3, 20, 400 })
        {
            foreach (var chance in new[] { 1e-3, 0.02, 0.1, 0.5, 0.9 })
            {
                if (law.TryTime(chance, intact, out var time))
                {
                    time.ShouldBeGreaterThanOrEqualTo(intact);
                    if (time > intact)
                    {
                        law.ChanceBefore(time, intact).ShouldBe(chance, 1e-9, $"{chance} after {intact}");
                    }
                }
                else
                {
                    law.ChanceBefore(Latest, intact).ShouldBeLessThan(chance);
                }
            }
        }
    }

    [Fact]
    public void What_is_known_not_to_have_happened_is_divided_out()
    {
        // Without memory: the chance of the next 10 is that of the first 10, 1 − e^(−1/2), whatever is known.
        var law = CrossingLaw.Of(Laws["exponential"], Latest);
        foreach (var intact in new[] { 0.0, 5, 30 })
        {
            law.ChanceBefore(intact + 10, intact).ShouldBe(1 - Math.Exp(-0.5), 0.006);
            law.ChanceBefore(intact, intact).ShouldBe(0);
            law.ChanceBefore(intact / 2, intact).ShouldBe(0);
            law.TryTime(0.5, intact, out var median).ShouldBeTrue();
            (median - intact).ShouldBe(20 * Math.Log(2), 0.4);
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(0.5)]
    public void A_faster_clock_brings_the_rest_nearer(double acceleration)
    {
        var law = CrossingLaw.Of(Laws["exponential"], Latest);
        var aged = law.Aged(5, acceleration);
        aged.ChanceBefore(4).ShouldBe(1 - Math.Exp(-0.2), 0.003);
        foreach (var after in new[] { 1.0, 10, 60 })
        {
            aged.ChanceBefore(5 + after).ShouldBe(1 - Math.Exp(-(5 + acceleration * after) / 20), 0.004);
        }
    }

    [Fact]
    public void Whatever_the_law_the_answers_are_chances_in_order() =>
        Gen.Select(Gen.Double[0.1, 500], Gen.Double[0.1, 5], Gen.Double[0, 1], Gen.Double[0, 2000], Gen.Double[0, 2000])
            .Holds(
                (middle, steepness, share, one, other) =>
                {
                    var law = CrossingLaw.Of(
                        t => share * 0.3 + 0.7 * (1 - Math.Exp(-Math.Pow(t / middle, steepness))),
                        Latest
                    );
                    var (early, late) = (Math.Min(one, other), Math.Max(one, other));
                    law.ChanceBefore(early).ShouldBeLessThanOrEqualTo(law.ChanceBefore(late));
                    law.ChanceBefore(late, early).ShouldBeInRange(0, 1);
                    if (law.TryTime(0.3, early, out var sooner) && law.TryTime(0.3, late, out var later))
                    {
                        later.ShouldBeGreaterThanOrEqualTo(sooner * (1 - 1e-9));
                    }
                },
                iter: 300
            );

    [Fact]
    public void Wrong_questions_are_named()
    {
        var law = CrossingLaw.Of(Laws["exponential"], Latest);
        Should.Throw<ArgumentOutOfRangeException>(() => CrossingLaw.Of(_ => 0, 0)).ParamName.ShouldBe("latest");
        Should.Throw<ArgumentOutOfRangeException>(() => law.ChanceBefore(-1)).ParamName.ShouldBe("time");
        Should.Throw<ArgumentOutOfRangeException>(() => law.ChanceBefore(1, -1)).ParamName.ShouldBe("intact");
        Should.Throw<ArgumentOutOfRangeException>(() => law.TryTime(1, 0, out _)).ParamName.ShouldBe("chance");
    }
}
