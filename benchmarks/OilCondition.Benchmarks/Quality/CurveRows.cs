using OilCondition.Cleanup;
using OilCondition.Statistics;

namespace OilCondition.Benchmarks.Quality;

/// <summary>What a fitted fall says of runs that are one exponential, and of runs that are not.</summary>
public static class CurveRows
{
    private const double Target = 70;

    public static IEnumerable<ScoreRow> Of(int runs) =>
        [
            .. new[] { (8, 2.5), (12, 2.5), (24, 2.5), (48, 2.5) }.SelectMany(plan =>
                new[] { Honest(plan.Item1, plan.Item2, false, runs), Honest(plan.Item1, plan.Item2, true, runs) }
            ),
            TwoFalls(runs),
            Shape(
                "dead time of 0.15 time constants, 24 readings over 2.2, scatter 1 % of the fall",
                h => HeldOutFalls.Late(h, 0.15),
                24,
                6,
                runs,
                "warned ≥ 80 %"
            ),
            Shape(
                "dead time of 0.15 time constants, 48 readings over 2.2, scatter 2.5 % of the fall",
                h => HeldOutFalls.Late(h, 0.15),
                48,
                15,
                runs,
                "warned ≥ 80 %"
            ),
            Shape(
                "slow heat-up (28 to 62 °C, 4 % a kelvin), 24 readings over 2.2, scatter 1 % of the fall",
                HeldOutFalls.Warming,
                24,
                6,
                runs,
                "warned ≥ 80 %"
            ),
            Shape(
                "slow heat-up, 48 readings over 2.2, scatter 2.5 % of the fall",
                HeldOutFalls.Warming,
                48,
                15,
                runs,
                "warned ≥ 80 %"
            ),
            WithTemperature(24, 6, runs),
            WithTemperature(48, 15, runs),
            Flat(runs),
            Rising(runs),
            .. new[] { 6, 8, 12, 24 }.Select(count => Scatter(count, runs)),
            .. new[] { 6, 8, 12 }.Select(count => Robust(count, runs)),
            .. new[] { 6, 10, 16 }.Select(count => Wild(count, runs)),
        ];

    private static bool IsWarned(CleanupCurve curve) =>
        curve.CoverageInDoubt || curve.Course.IsContradicted || curve.LeftOutReadings.Count > 0;

    private static ScoreRow Honest(int count, double span, bool proportional, int runs)
    {
        var random = new Random(4100 + 10 * count + (int)(10 * span) + (proportional ? 1 : 0));
        var hours = HeldOutFalls.Evenly(count, span);
        var truth = HeldOutFalls.Start.AddHours(HeldOutFalls.Reaches(h => HeldOutFalls.One(h), Target));
        var tally = new CurveTally();
        for (var run = 0; run < runs; run++)
        {
            var curve = HeldOutFalls.Fit(
                random,
                h => HeldOutFalls.One(h),
                hours,
                value => proportional ? 0.045 * value : 18
            );
            tally.Add(curve.TimeTo(Target), truth, IsWarned(curve));
        }

        return new ScoreRow(
            $"one exponential, {count} readings over {span:0.#} time constants, scatter {(proportional ? "4.5 % of the value" : "3 % of the fall")}",
            $"doubted {tally.Warned} %, time holds {tally.Held} %, never {tally.Never} %",
            "doubted about 5 %, time holds ≥ 85 %",
            runs
        );
    }

    private static ScoreRow TwoFalls(int runs)
    {
        var random = new Random(4200);
        var truth = HeldOutFalls.Start.AddHours(HeldOutFalls.Reaches(HeldOutFalls.Two, Target));
        var tally = new CurveTally();
        for (var run = 0; run < runs; run++)
        {
            var curve = HeldOutFalls.Fit(random, HeldOutFalls.Two, HeldOutFalls.Evenly(12, 3), _ => 1.6);
            tally.Add(curve.TimeTo(Target), truth, IsWarned(curve));
        }

        return new ScoreRow(
            "two exponentials, one at a fifth of the rate of the other, 12 readings over 3 time constants, scatter 1.6 mg/kg",
            $"'never' {tally.Never} % though it arrives, warned {tally.Warned} %",
            "'never' ≤ 5 %, warned ≥ 70 %",
            runs
        );
    }

    private static ScoreRow Shape(
        string what,
        Func<double, double> fall,
        int count,
        double scatter,
        int runs,
        string mustBe
    )
    {
        var random = new Random(4300 + count);
        var truth = HeldOutFalls.Start.AddHours(HeldOutFalls.Reaches(fall, Target));
        var tally = new CurveTally();
        for (var run = 0; run < runs; run++)
        {
            var curve = HeldOutFalls.Fit(random, fall, HeldOutFalls.Evenly(count, 2.2), _ => scatter);
            tally.Add(curve.TimeTo(Target), truth, IsWarned(curve));
        }

        return new ScoreRow(
            what,
            $"warned or an initial phase named {tally.Warned} %, later than the latest {tally.Late} %, later and not warned {tally.LateUnwarned} %",
            mustBe,
            runs
        );
    }

    private static ScoreRow WithTemperature(int count, double scatter, int runs)
    {
        var random = new Random(4400 + count);
        var truth = HeldOutFalls.Start.AddHours(HeldOutFalls.Reaches(HeldOutFalls.Warming, Target));
        var tally = new CurveTally();
        for (var run = 0; run < runs; run++)
        {
            var curve = HeldOutFalls.FitWarm(
                random,
                HeldOutFalls.Warming,
                HeldOutFalls.Evenly(count, 2.2),
                _ => scatter
            );
            tally.Add(curve.TimeTo(Target), truth, IsWarned(curve));
        }

        return new ScoreRow(
            $"the same slow heat-up with oil temperatures, {count} readings, scatter {scatter:0} mg/kg",
            $"time holds {tally.Held} %, later than the latest {tally.Late} %, doubted {tally.Warned} %",
            "time holds ≥ 85 %, later ≤ 10 %",
            runs
        );
    }

    private static ScoreRow Flat(int runs)
    {
        var random = new Random(4500);
        List<double> earliest = [];
        var fromTheStart = 0;
        for (var run = 0; run < runs; run++)
        {
            var curve = HeldOutFalls.Fit(random, _ => 200, HeldOutFalls.Evenly(16, 36), _ => 20);
            if (curve.TimeTo(100) is Arrival<DateTimeOffset>.NotBefore it)
            {
                var hours = (it.Earliest - HeldOutFalls.Start).TotalHours;
                earliest.Add(hours);
                fromTheStart += hours < 1 ? 1 : 0;
            }
        }

        earliest.Sort();
        return new ScoreRow(
            "flat run of 36 h at 200 mg/kg, scatter 20, target 100",
            $"from the start {ScoreRow.Percent(fromTheStart, runs)}, earliest in the middle of runs {earliest[earliest.Count / 2]:0} h",
            "from the start 0 %, earliest as the steepest line that agrees",
            runs
        );
    }

    private static ScoreRow Rising(int runs)
    {
        var random = new Random(4600);
        var never = 0;
        for (var run = 0; run < runs; run++)
        {
            var curve = HeldOutFalls.Fit(random, h => 110 + 2 * h, HeldOutFalls.Evenly(16, 36), _ => 8);
            never += curve.TimeTo(90) is Arrival<DateTimeOffset>.Never ? 1 : 0;
        }

        return new ScoreRow(
            "run that rises from 110 to 182 mg/kg in 36 h, scatter 8, target 90",
            $"never on this course {ScoreRow.Percent(never, runs)}",
            "≥ 95 %",
            runs
        );
    }

    private static ScoreRow Scatter(int count, int runs)
    {
        var random = new Random(4700 + count);
        var holds = 0;
        for (var run = 0; run < runs; run++)
        {
            var curve = HeldOutFalls.Fit(
                random,
                h => HeldOutFalls.One(h),
                HeldOutFalls.Evenly(count, 3.2),
                value => 0.055 * value
            );
            holds += curve.RateIntervalPerHour().Contains(1) ? 1 : 0;
        }

        return new ScoreRow(
            $"scatter in proportion (5.5 %), read by default, {count} readings over 3.2 time constants",
            $"rate interval holds {ScoreRow.Percent(holds, runs)}",
            "≥ 85 %",
            runs
        );
    }

    private static ScoreRow Robust(int count, int runs)
    {
        var random = new Random(4800 + count);
        var options = new CleanupOptions(DecayNoise.Constant, robust: true, detectSlowStart: false);
        var hours = HeldOutFalls.Evenly(count, 2.5);
        var holds = 0;
        for (var run = 0; run < runs; run++)
        {
            var values = HeldOutFalls.Values(random, h => HeldOutFalls.One(h), hours, _ => 18);
            values[random.Next(count)] += 180;
            holds += CleanupCurve
                .Fit([.. hours.Select(HeldOutFalls.Start.AddHours)], values, options)
                .RateIntervalPerHour()
                .Contains(1)
                ? 1
                : 0;
        }

        return new ScoreRow(
            $"'robust', one outlier of ten times the scatter, {count} readings over 2.5 time constants",
            $"rate interval holds {ScoreRow.Percent(holds, runs)}",
            "≥ 85 %",
            runs
        );
    }

    private static ScoreRow Wild(int count, int runs)
    {
        var random = new Random(4900 + count);
        var hours = HeldOutFalls.Evenly(count, 3);
        var flagged = 0;
        for (var run = 0; run < runs; run++)
        {
            var values = HeldOutFalls.Values(random, h => HeldOutFalls.One(h, 800, 50), hours, _ => 12);
            var place = random.Next(count);
            values[place] = 100_000;
            var found = CleanupCurve.Fit([.. hours.Select(HeldOutFalls.Start.AddHours)], values).FlaggedReadings;
            flagged += found.Contains(place) ? 1 : 0;
        }

        return new ScoreRow(
            $"one reading of 100 000 in a fall from 800 to 50, {count} readings",
            $"flagged {ScoreRow.Percent(flagged, runs)}",
            "≥ 95 %",
            runs
        );
    }
}
