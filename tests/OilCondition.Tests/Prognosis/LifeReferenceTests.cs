using System.Globalization;
using System.Text.RegularExpressions;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Reference;
using UnitsNet;

namespace OilCondition.Tests.Prognosis;

/// <summary>life.csv: every quantity is mapped to a library call or left out with a reason.</summary>
public partial class LifeReferenceTests
{
    private const string File = "life.csv";

    private const double KilojoulesPerMolePerElectronvolt = 96.48533212331;

    /// <summary>Answers as the file writes them: a number, a list of numbers, or what becomes of a course.</summary>
    private static readonly Dictionary<string, Func<ReferenceCase, object>> Mapped = new(StringComparer.Ordinal)
    {
        ["Weibull shape"] = row => Weibull(row).Shape,
        ["Weibull scale"] = row => Weibull(row).Scale,
        ["log-likelihood"] = row => Weibull(row).LogLikelihood,
        ["SE of shape (observed information)"] = row => Weibull(row).ShapeStandardError,
        ["SE of scale"] = row => Weibull(row).ScaleStandardError,
        ["95 % lower limit of shape, log-normal approximation"] = row => Weibull(row).ShapeInterval(0.95).Lower!.Value,
        ["95 % upper limit of shape"] = row => Weibull(row).ShapeInterval(0.95).Upper!.Value,
        ["B10 life"] = row => Weibull(row).AgeAt(0.1),
        ["95 % lower limit of B10 (delta method on ln t)"] = row => Weibull(row).AgeInterval(0.1, 0.95).Lower!.Value,
        ["95 % upper limit of B10"] = row => Weibull(row).AgeInterval(0.1, 0.95).Upper!.Value,
        ["median life"] = row => Weibull(row).AgeAt(0.5),
        ["mean life eta*Gamma(1+1/beta)"] = row => Weibull(row).Mean,
        ["reliability at t0"] = row => Weibull(row).Reliability(Figure(row, "t0=")),
        ["conditional reliability R(t0+dt)/R(t0)"] = row =>
            Weibull(row).ConditionalReliability(Figure(row, "t0="), Figure(row, "dt=")),
        ["mean residual life at t0"] = row => Weibull(row).MeanResidualLife(Figure(row, "t0=")),
        ["ageing acceleration factor"] = row => Paper(row, InsulationPaper.Upgraded65Rise),
        ["same for 55 C rise paper, reference 95 C"] = row => Paper(row, InsulationPaper.Kraft55Rise),
        ["relative ageing rate, non-upgraded paper 2^((T-98)/6)"] = row =>
            Paper(row, InsulationPaper.KraftSixDegreeRule),
        ["equivalent ageing factor over a cycle"] = row => Cycle(row).Mean.DecimalFractions,
        ["loss of life of that 24 h cycle"] = row =>
        {
            var (mean, time) = Cycle(Before(row));
            return InsulationAgeing.LossOfLife(mean, time, TimeSpan.FromHours(Figure(row, "normal life "))).Percent;
        },
        ["Arrhenius acceleration factor exp(Ea/k (1/T1-1/T2))"] = row =>
            ThermalAgeing
                .Acceleration(
                    MolarEnergy.FromKilojoulesPerMole(Figure(row, "Ea=") * KilojoulesPerMolePerElectronvolt),
                    Temperature.FromDegreesCelsius(Figure(row, "eV; ")),
                    Temperature.FromDegreesCelsius(Figure(row, "C to "))
                )
                .DecimalFractions,
        ["life divisor of the 10 C rule, 2^(dT/10)"] = row =>
            ThermalAgeing
                .TenDegreeRule(TemperatureDelta.FromDegreesCelsius(Figure(row, "temperature rise ")))
                .DecimalFractions,
        ["activation energy that gives exactly a doubling from T to T+10"] = row =>
            ThermalAgeing
                .TenDegreeActivationEnergy(Temperature.FromDegreesCelsius(Figure(row, "T=")))
                .KilojoulesPerMole,
        ["long-run level A0*m/(k+m)"] = row => Additive(row).LongRun,
        ["level at 12 months"] = row => Additive(row).ValueAt(12),
        ["time to the limit"] = row => Additive(row).TimeTo(Figure(row, "limit ")),
        ["turbine severity B"] = row => Severity(row).PercentPerYear,
        ["long-run remaining resistance 100(1-B/M)"] = row => Severity(row).LongRunLevel().Percent,
        ["time to 25 % at that severity"] = row => Severity(row).YearsTo(Ratio.FromPercent(25)),
        ["limit of B for M->0"] = row => Severity(row).PercentPerYear,
        ["steady-state concentration w/q"] = row => Wear(row).SteadyConcentration().MilligramsPerLiter,
        ["time constant V/q"] = row => Wear(row).TimeConstant().TotalHours,
        ["concentration after t, clean start"] = row =>
            Wear(row).ConcentrationAfter(TimeSpan.FromHours(Figure(row, "t="))).MilligramsPerLiter,
        ["make-up corrected (no-loss) concentration w t/V"] = row =>
            Wear(row).ConcentrationWithoutLossAfter(TimeSpan.FromHours(Figure(row, "t="))).MilligramsPerLiter,
        ["cumulative (make-up corrected) series"] = row => Corrected(row),
        ["wear rate from the last corrected step"] = row =>
        {
            var (corrected, hours) = (Corrected(Before(row)), List(Before(row), " at "));
            return (corrected[^1] - corrected[^2]) / (hours[^1] - hours[^2]) * Figure(Before(row), "V=");
        },
        ["exponential decay: time to target"] = row => Decay(row).TimeTo(Figure(row, "target ")),
        ["exponential decay: target below the floor"] = row => Decay(row).TimeTo(Figure(row, "target ")),
        ["already past the target at t=0"] = row => Decay(row).TimeTo(Figure(row, "target ")),
        ["CRPS of a normal forecast"] = row =>
            ForecastScore.NormalRankedProbability(Figure(row, "mean="), Figure(row, "sd="), Figure(row, "outcome=")),
        ["CRPS of a 5-member ensemble"] = row =>
            ForecastScore.EnsembleRankedProbability(List(row, "members "), Figure(row, "outcome ")),
        ["interval (Winkler) score, alpha=0.05"] = row =>
            ForecastScore.Interval(Figure(row, "interval "), Figure(row, "to "), Figure(row, "outcome "), 0.95),
        ["coverage probability"] = row => Coverage(row).Share,
        ["Clopper-Pearson 95 % lower limit"] = row => Coverage(row).ShareInterval(0.95).Lower!.Value,
        ["Clopper-Pearson 95 % upper limit"] = row => Coverage(row).ShareInterval(0.95).Upper!.Value,
        ["exact two-sided p against 0.95"] = row => Coverage(row).ChanceIfHonest(0.95),
        ["alpha-lambda verdicts (1 inside)"] = row =>
            Pairs(row, (truth, forecast) => ForecastScore.IsWithin(truth, forecast, Figure(row, "alpha=")) ? 1 : 0),
        ["relative accuracy 1-|r-rhat|/r at each time"] = row => Pairs(Before(row), ForecastScore.RelativeAccuracy),
        ["mean relative accuracy (equal weights)"] = row =>
            Pairs(Before(row), ForecastScore.RelativeAccuracy).Average(),
        ["probability integral transform of a normal forecast"] = row =>
            ForecastScore.NormalTransform(Figure(row, "mean="), Figure(row, "sd="), Figure(row, "outcome=")),
    };

    private static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
        ["Arrhenius-lognormal activation energy, motorette data"] =
            "an accelerated life test at several temperatures belongs to an insulation laboratory; the data are not in the file",
        ["its SE"] = "as above",
        ["log-normal sigma"] = "as above",
        ["adjusted rank of failure 1"] =
            "a line on probability paper is drawn by hand; the library plans with the likelihood, and the two must not be mixed",
        ["adjusted rank of failure 2"] = "as above",
        ["adjusted rank of failure 3"] = "as above",
        ["adjusted rank of failure 4"] = "as above",
        ["adjusted rank of failure 5"] = "as above",
        ["rank-regression shape (X on Y)"] = "as above",
        ["rank-regression scale (X on Y)"] = "as above",
        ["asymmetric RUL score, d = predicted - true"] =
            "its constants, 10 and 13 cycles, belong to one competition on engines and mean nothing for oil",
    };

    /// <summary>What the library makes of a row.</summary>
    internal static object Answer(ReferenceCase row) => Mapped[row.Quantity](row);

    public static TheoryData<string, string, string> Rows() =>
        ReferenceFolder.Theory(File, row => Mapped.ContainsKey(row.Quantity));

    [Theory]
    [MemberData(nameof(Rows))]
    [Trait("Category", "Reference")]
    public void Agrees_with_its_source(string file, string id, string description)
    {
        description.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        switch (Mapped[row.Quantity](row))
        {
            case double number:
                row.ShouldAgree(number);
                break;
            case double[] numbers:
                var expected = row.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries);
                numbers.Length.ShouldBe(expected.Length, id);
                foreach (var (text, number) in expected.Zip(numbers))
                {
                    (row with { Value = text }).ShouldAgree(number);
                }

                break;
            case Arrival<double> arrival when row.TryNumber(out _):
                row.ShouldAgree(arrival.ShouldBeOfType<Arrival<double>.Expected>(id).Estimate);
                break;
            case Arrival<double> arrival:
                arrival.GetType().ShouldBe(Meaning(row.Value), id);
                break;
            default:
                throw new InvalidOperationException($"{id}: an answer of a kind that nobody compares");
        }
    }

    [Fact]
    public void Every_quantity_is_mapped_or_left_out_with_a_reason() =>
        ReferenceFolder.ShouldAnswerFor(
            File,
            quantity => Mapped.ContainsKey(quantity) || LeftOut.ContainsKey(quantity)
        );

    private static Type Meaning(string words) =>
        words.StartsWith("never", StringComparison.OrdinalIgnoreCase) ? typeof(Arrival<double>.Never)
        : words.Contains("already", StringComparison.OrdinalIgnoreCase) ? typeof(Arrival<double>.Already)
        : throw new InvalidOperationException($"'{words}' is a word without a meaning in these tests");

    private static WeibullFit Weibull(ReferenceCase row) =>
        WeibullLife.Fit(Ages(row.Inputs, "failures "), Ages(row.Inputs, "suspensions "));

    /// <summary>Ages as the file writes them: <c>54 187</c>, <c>1150(2)</c> for two alike, <c>10 x 500</c> for ten alike.</summary>
    private static double[] Ages(string inputs, string word)
    {
        var start = inputs.LastIndexOf(word, StringComparison.Ordinal);
        if (start < 0)
        {
            return [];
        }

        var text = inputs[(start + word.Length)..].Split(';')[0];
        return
        [
            .. AgeToken()
                .Matches(text)
                .SelectMany(match =>
                    Enumerable.Repeat(
                        Read(match.Groups["age"].Value),
                        match.Groups["before"].Success ? (int)Read(match.Groups["before"].Value)
                            : match.Groups["after"].Success ? (int)Read(match.Groups["after"].Value)
                            : 1
                    )
                ),
        ];
    }

    private static double Paper(ReferenceCase row, InsulationPaper paper) =>
        InsulationAgeing.Acceleration(paper, Temperature.FromDegreesCelsius(Figure(row, "hot spot "))).DecimalFractions;

    private static (Ratio Mean, TimeSpan Time) Cycle(ReferenceCase row)
    {
        var steps = CycleStep()
            .Matches(row.Inputs)
            .Select(match =>
                (
                    Temperature.FromDegreesCelsius(Read(match.Groups["celsius"].Value)),
                    TimeSpan.FromHours(Read(match.Groups["hours"].Value))
                )
            )
            .ToList();
        return (
            InsulationAgeing.MeanAcceleration(InsulationPaper.Upgraded65Rise, steps),
            TimeSpan.FromHours(steps.Sum(step => step.Item2.TotalHours))
        );
    }

    private static FirstOrderCourse Additive(ReferenceCase row) =>
        FirstOrderCourse.WithMakeUp(Figure(row, "A0="), Figure(row, "A0="), Figure(row, " k="), Figure(row, " m="));

    private static FirstOrderCourse Decay(ReferenceCase row) =>
        new(Figure(row, "C0="), Figure(row, "Cinf="), Figure(row, "k="));

    private static TurbineSeverity Severity(ReferenceCase row) =>
        TurbineSeverity.FromReading(
            Ratio.FromPercent(Figure(row, "X=")),
            TimeSpan.FromDays(365.25 * Figure(row, "t=")),
            row.Inputs.Contains("M=", StringComparison.Ordinal) ? Figure(row, "M=") : 0
        );

    private static WearBalance Wear(ReferenceCase row) =>
        new(
            MassFlow.FromMilligramsPerSecond(Figure(row, "w=") / 3600),
            VolumeFlow.FromLitersPerHour(Figure(row, "q=")),
            Volume.FromLiters(Figure(row, "V="))
        );

    private static double[] Corrected(ReferenceCase row)
    {
        var readings = List(row, "readings ");
        return WearCorrection.WithoutLoss(
            readings,
            [.. readings.Select(_ => Figure(row, "h; "))],
            Volume.FromLiters(Figure(row, "V="))
        );
    }

    private static IntervalCoverage Coverage(ReferenceCase row)
    {
        var of = Before(row);
        return new IntervalCoverage((int)Figure(of, "^"), (int)Figure(of, " of "));
    }

    private static double[] Pairs(ReferenceCase row, Func<double, double, double> of) =>
        [.. List(row, "true RUL ").Zip(List(row, "predicted "), of)];

    /// <summary>The row whose inputs a row means when it says 'same', or the cycle that it points back to.</summary>
    private static ReferenceCase Before(ReferenceCase row)
    {
        var rows = ReferenceFolder.Cases(File).ToList();
        var at = rows.FindIndex(one => one.Id == row.Id);
        if (row.Quantity.Contains("of that", StringComparison.Ordinal))
        {
            at--;
        }

        while (rows[at].Inputs == "same")
        {
            at--;
        }

        return rows[at];
    }

    private static double Figure(ReferenceCase row, string after) =>
        Read(
            Regex
                .Match(
                    row.Inputs,
                    $"{(after == "^" ? after : Regex.Escape(after))}(?<figure>-?[0-9.]+(e-?[0-9]+)?)",
                    RegexOptions.ExplicitCapture,
                    TimeSpan.FromSeconds(1)
                )
                .Groups["figure"]
                .Value
        );

    private static double[] List(ReferenceCase row, string after) =>
        [
            .. Regex
                .Match(
                    row.Inputs,
                    $"{Regex.Escape(after)}(?<list>[0-9. -]+)",
                    RegexOptions.ExplicitCapture,
                    TimeSpan.FromSeconds(1)
                )
                .Groups["list"]
                .Value.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Select(Read),
        ];

    private static double Read(string text) =>
        double.Parse(text.TrimEnd('.'), NumberStyles.Float, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"((?<before>\d+) x )?(?<age>\d+(\.\d+)?)(\((?<after>\d+)\))?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex AgeToken();

    [GeneratedRegex(@"(?<hours>[\d.]+) h at (?<celsius>[\d.]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CycleStep();
}
