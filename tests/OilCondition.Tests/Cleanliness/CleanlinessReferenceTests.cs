using System.Globalization;
using OilCondition.Cleanliness;
using OilCondition.Tests.Reference;
using UnitsNet;

namespace OilCondition.Tests.Cleanliness;

/// <summary>cleanliness.csv: every quantity is mapped to a library call or left out with a reason.</summary>
public class CleanlinessReferenceTests
{
    private const string File = "cleanliness.csv";

    /// <summary>Answers as the file writes them: a word, a number, or the two ends of an interval.</summary>
    private static readonly Dictionary<string, Func<ReferenceCase, object>> Mapped = new(StringComparer.Ordinal)
    {
        ["iso4406.scale_number"] = row => ScaleNumber.Of(Iso4406.ScaleNumber(PerMillilitre(row, "n"))).ToString(),
        ["iso4406.interval"] = row => Bounds((int)Figure(row, "scale")),
        ["iso4406.code"] = row => Code(row).ToString("A"),
        ["iso4406.scale_number_with_flag"] = row => Count(row, "counted").ScaleNumber.ToString("A"),
        ["iso4406.parse"] = row =>
        {
            var code = CleanlinessCode.Parse(row.Arguments["code"]);
            code.At4.ShouldBe(ScaleNumber.NotCounted);
            return $"n5 in {Bounds(code.At6.Number)}; n15 in {Bounds(code.At14.Number)}";
        },
        ["mean_of_samples"] = row =>
        {
            var counts = row.Arguments["n4"].Split(" and ").Select(text => Read(text.Replace("/mL", ""))).ToArray();
            return Invariant($"{Iso4406.ScaleNumber(counts.Average())} (arithmetic mean {counts.Average()} /mL)");
        },
        ["relative_sd"] = row => Count(row, "counted").RelativeStandardDeviation.Percent,
        ["poisson_ci95"] = row =>
            (Count(row, "counted").Interval(0.95).Lower, Count(row, "counted").Interval(0.95).Upper),
        ["iso4406_scale_ci95"] = row =>
            $"{Count(row, "counted").ScaleNumbers(0.95).Lowest}..{Count(row, "counted").ScaleNumbers(0.95).Highest}",
        ["two_count_z"] = row => CountDifference.Between(Count(row, "counted1"), Count(row, "counted2")).Z,
        ["efficiency_from_beta"] = row => Filter(row).Efficiency.Percent,
        ["beta_from_counts"] = row => Beta(row),
        ["beta_time_averaged"] = row => Beta(row),
        ["loop_steady_state"] = row => Loop(row).SteadyPerMillilitre,
        ["inline_downstream_steady_state"] = row => Loop(row).SteadyDownstreamPerMillilitre,
        ["loop_transient"] = row =>
            Loop(row).CountAfter(PerMillilitre(row, "N0"), TimeSpan.FromMinutes(Figure(row, "t"))),
        ["time_to_reach"] = row =>
        {
            var time = Loop(row).TimeTo(PerMillilitre(row, "N0"), PerMillilitre(row, "Ntarget"));
            return time switch
            {
                Arrival<TimeSpan>.Never => ReferenceBehaviour.Never,
                Arrival<TimeSpan>.Already when !row.TryNumber(out _) => ReferenceBehaviour.Already,
                _ => Minutes(time),
            };
        },
        ["ingression_from_steady_state"] = row =>
            KidneyLoop.IngressionPerMinuteFrom(PerMillilitre(row, "N"), Flow(row), Filter(row)),
        ["turnovers_per_code"] = row => Loop(row).Turnovers(TimeSpan.FromMinutes(Minutes(Loop(row).TimeTo(2, 1)))),
        ["nas1638.class"] = row => Differential(row).Class.ToString(),
        ["as4059.class_cumulative"] = row =>
            Printing(row).ClassOf(Size(row.Arguments["size"]), Per100Millilitres(row, "n")).ToString(),
        ["as4059.class_triplet"] = row => Printing(row).CodeOf(Cumulative(row)).ToString(),
        ["as4059.class_all"] = row => Printing(row).SpanOf(Cumulative(row)).Parts.Single().Class.ToString(),
        ["as4059_limit_to_iso4406"] = row =>
            ClassCorrespondence
                .ScaleNumbers(
                    Size(row.Arguments["size"]),
                    CleanlinessClass.Parse(row.Arguments["class"]),
                    Printing(row)
                )
                .Highest.ToString(),
        ["us_navy.class"] = row =>
            CleanlinessClass
                .OfUsNavy(
                    Per100Millilitres(row, "d5_10"),
                    Per100Millilitres(row, "d10_25"),
                    Per100Millilitres(row, "d25_50"),
                    Per100Millilitres(row, "d50_100"),
                    Per100Millilitres(row, "d100")
                )
                .ToString(),
        ["acftd_to_um_c"] = row => ParticleSizes.AcftdToMicrometresC(Figure(row, "d")),
        ["um_c_to_acftd"] = row => ParticleSizes.MicrometresCToAcftd(Figure(row, "d")),
        ["cumulative_loglog"] = row =>
        {
            var counted = row
                .Arguments.Keys.Where(name => name[0] == 'n')
                .Select(name => (Micrometres: Read(name[1..]), Count: PerMillilitre(row, name)))
                .OrderBy(point => point.Micrometres)
                .ToArray();
            return new SizeDistribution(
                [.. counted.Select(point => point.Micrometres)],
                [.. counted.Select(point => point.Count)]
            ).PerMillilitreAt(Figure(row, "d"));
        },
        ["time_to_drop_codes"] = row => Minutes(Loop(row).TimeTo(Math.Pow(2, Figure(row, "codes")), 1)),
    };

    private static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
        ["iso281_contamination_factor"] =
            "bearing life is outside what this room answers; coefficients recalled, not seen",
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
        object said;
        try
        {
            said = Mapped[row.Quantity](row);
        }
        catch (ArgumentException) when (!row.TryNumber(out _))
        {
            said = ReferenceBehaviour.Refused;
        }

        switch (said)
        {
            case ReferenceBehaviour behaviour:
                ReferenceWords.Meanings(row.Value).ShouldContain(behaviour);
                break;
            case double number:
                row.ShouldAgree(number);
                break;
            case (double lower, double upper):
                var ends = row.Value.Split("..");
                (row with { Value = ends[0] }).ShouldAgree(lower);
                (row with { Value = ends[1] }).ShouldAgree(upper);
                break;
            case string word:
                word.ShouldBe(row.Value, $"{id} {row.Quantity} ({row.Inputs}), source: {row.Source}");
                break;
            default:
                throw new InvalidOperationException(id);
        }
    }

    [Fact]
    public void Every_quantity_is_mapped_or_left_out_with_a_reason() =>
        ReferenceFolder.ShouldAnswerFor(
            File,
            quantity => Mapped.ContainsKey(quantity) || LeftOut.ContainsKey(quantity)
        );

    private static double Minutes(Arrival<TimeSpan> arrival) =>
        arrival.TryEstimate(out var time) ? time.TotalMinutes : throw new InvalidOperationException(arrival.ToString());

    private static CleanlinessCode Code(ReferenceCase row) =>
        row.Arguments.ContainsKey("n5")
            ? new CleanlinessCode(ScaleNumber.NotCounted, At(row, "5"), At(row, "15"))
            : new CleanlinessCode(At(row, "4"), At(row, "6"), At(row, "14"));

    private static ScaleNumber At(ReferenceCase row, string size)
    {
        if (row.Arguments.ContainsKey("counted" + size))
        {
            return Count(row, "counted" + size).ScaleNumber;
        }

        return row.Arguments.TryGetValue("n" + size, out var text) switch
        {
            true when text == "too numerous" => ScaleNumber.TooNumerous,
            true => ScaleNumber.Of(Iso4406.ScaleNumber(PerMillilitre(row, "n" + size))),
            _ => ScaleNumber.NotCounted,
        };
    }

    private static ParticleCount Count(ReferenceCase row, string name) =>
        new(
            (long)Figure(row, name),
            Volume.FromMilliliters(row.Arguments.ContainsKey("volume") ? Figure(row, "volume") : 1),
            row.Arguments.ContainsKey("dilution") ? Figure(row, "dilution") : 1
        );

    private static DifferentialCounts Differential(ReferenceCase row) =>
        new(
            Per100Millilitres(row, "d5_15"),
            Per100Millilitres(row, "d15_25"),
            Per100Millilitres(row, "d25_50"),
            Per100Millilitres(row, "d50_100"),
            Per100Millilitres(row, "d100")
        );

    private static Dictionary<As4059Size, double> Cumulative(ReferenceCase row) =>
        row
            .Arguments.Keys.Where(name => name.Length == 2 && name[0] == 'n')
            .ToDictionary(name => Size(name[1..]), name => Per100Millilitres(row, name));

    private static As4059Size Size(string letter) => Enum.Parse<As4059Size>(letter);

    /// <summary>The exact table, unless the row names the rounded one.</summary>
    private static As4059 Printing(ReferenceCase row) =>
        row.Arguments.TryGetValue("table", out var table) && table.Contains("round", StringComparison.OrdinalIgnoreCase)
            ? As4059.Rounded
            : As4059.Exact;

    private static double Per100Millilitres(ReferenceCase row, string name) =>
        row.Arguments[name].EndsWith("/mL", StringComparison.Ordinal)
            ? Math.Round(Figure(row, name) * 100, 6)
            : Figure(row, name);

    private static double Beta(ReferenceCase row) =>
        FilterBeta.FromCounts(Column(row, "n_up"), Column(row, "n_down")).Value;

    private static double[] Column(ReferenceCase row, string name) =>
        [.. row.Arguments[name].Split(' ')[0].Split(',').Select(Read)];

    private static FilterBeta Filter(ReferenceCase row) => new(Figure(row, "beta"));

    private static VolumeFlow Flow(ReferenceCase row) =>
        VolumeFlow.FromLitersPerMinute(row.Arguments.ContainsKey("Q") ? Figure(row, "Q") : 1);

    private static KidneyLoop Loop(ReferenceCase row) =>
        new(
            Volume.FromLiters(row.Arguments.ContainsKey("V") ? Figure(row, "V") : 1),
            Flow(row),
            Filter(row),
            row.Arguments.ContainsKey("R") ? Figure(row, "R") : 0
        );

    private static string Bounds(int number) =>
        Invariant($"({Iso4406.LowerLimitPerMillilitre(number)}, {Iso4406.UpperLimitPerMillilitre(number)}]");

    private static double PerMillilitre(ReferenceCase row, string name) =>
        row.Arguments[name].EndsWith("/100mL", StringComparison.Ordinal) ? Figure(row, name) / 100 : Figure(row, name);

    /// <summary>The number before the unit.</summary>
    private static double Figure(ReferenceCase row, string name) => Read(row.Arguments[name].Split(' ')[0]);

    private static double Read(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
