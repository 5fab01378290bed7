extern alias charts;

using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using charts::OilCondition.Charts;
using OilCondition.Tests.Architecture;
using OilCondition.Tests.Sampling;
using SkiaSharp;

namespace OilCondition.Tests.Charts;

/// <summary>The same chart is the same bytes everywhere, and the bytes are what a page or a work request can take.</summary>
public partial class ChartBytesTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Two_drawings_are_the_same_bytes()
    {
        foreach (var (name, chart) in AllCharts.OfPage())
        {
            chart.ToSvg().ShouldBe(chart.ToSvg(), name);
            chart.ToPng(0.5).SequenceEqual(chart.ToPng(0.5)).ShouldBeTrue(name);
        }
    }

    [Fact]
    public void Charts_made_anew_are_the_same_bytes() =>
        TrendChart
            .Of(Drawn.Rising(), Measurands.AcidNumber)
            .ToSvg()
            .ShouldBe(TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber).ToSvg());

    [Fact]
    public void The_culture_of_the_machine_changes_nothing()
    {
        var usual = CultureInfo.CurrentCulture;
        var expected = AllCharts.OfPage().Select(one => one.Chart.ToSvg()).ToList();
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NegativeSign = "~";
        comma.DateTimeFormat.DateSeparator = "_";
        comma.DateTimeFormat.TimeSeparator = "_";
        try
        {
            CultureInfo.CurrentCulture = comma;
            1.5.ToString().ShouldBe("1,5");

            AllCharts.OfPage().Select(one => one.Chart.ToSvg()).ShouldBe(expected);
            TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber).ToPng().Length.ShouldBeGreaterThan(1000);
        }
        finally
        {
            CultureInfo.CurrentCulture = usual;
        }
    }

    /// <summary>Records of one moment, written in two zones, at one stated offset.</summary>
    [Fact]
    public void The_zone_in_which_records_are_written_changes_nothing_where_an_offset_is_stated()
    {
        ConditionAssessment At(TimeSpan offset) =>
            ConditionAssessor.Assess(
                OilHistory.Create(
                    Drawn.Machine(),
                    Enumerable
                        .Range(0, 6)
                        .Select(i => new OilSample(
                            $"S{i}",
                            Invented.Start.AddDays(30 * i).ToOffset(offset),
                            new Dictionary<Measurand, Reading> { [Measurands.AcidNumber] = new(0.1 + 0.01 * i) }
                        )),
                    [],
                    []
                ),
                new LimitSet("invented", [Drawn.Above(Measurands.AcidNumber, 0.3, 0.4)]),
                new AssessmentOptions(Invented.Start.AddDays(160).ToOffset(offset))
            );
        var options = new ChartOptions(utcOffset: TimeSpan.FromHours(1));

        TrendChart
            .Of(At(TimeSpan.FromHours(9)), Measurands.AcidNumber, options)
            .ToSvg()
            .ShouldBe(TrendChart.Of(At(TimeSpan.Zero), Measurands.AcidNumber, options).ToSvg());
    }

    [Fact]
    public void The_package_asks_neither_clock_nor_zone_nor_culture_nor_environment()
    {
        var files = Directory
            .EnumerateFiles(RepositoryFiles.PathOf("src", "OilCondition.Charts"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains("/obj/", StringComparison.Ordinal))
            .ToList();

        files.Count.ShouldBeGreaterThan(20);
        files.Where(file => OfTheMachine().IsMatch(File.ReadAllText(file))).ShouldBeEmpty();
    }

    [Fact]
    public void Every_svg_is_well_formed_and_tells_what_it_shows()
    {
        foreach (var (name, chart) in AllCharts.OfStation().Concat(AllCharts.Odd()))
        {
            var root = XDocument.Parse(chart.ToSvg()).Root.ShouldNotBeNull(name);

            root.Name.ShouldBe(Svg + "svg");
            root.Attribute("width")!.Value.ShouldBe("900");
            root.Element(Svg + "title")!.Value.ShouldBe(chart.Title, name);
            root.Element(Svg + "desc")!.Value.ShouldBe(chart.Description, name);
            chart.Description.ShouldNotBeNullOrWhiteSpace(name);
        }
    }

    [Fact]
    public void No_two_charts_of_a_page_share_an_identifier_and_every_reference_is_met()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (name, chart) in AllCharts.OfPage())
        {
            var svg = chart.ToSvg();
            var own = Identifier().Matches(svg).Select(match => match.Groups["id"].Value).ToList();

            own.ShouldAllBe(id => seen.Add(id), name);
            Reference().Matches(svg).Select(match => match.Groups["id"].Value).ShouldBeSubsetOf(own, name);
            Reference().Count(svg).ShouldBeGreaterThan(0, name);
        }
    }

    [Fact]
    public void Names_that_would_break_a_page_are_texts_without_turns_of_direction()
    {
        var chart = TrendChart.Of(Drawn.Rising(machine: Drawn.Machine("M", AllCharts.Hostile)), Measurands.AcidNumber);

        chart.Title.ShouldBe("M pump <b>\"A\" & B</b> gnp.x]]> --> {0}: acid number");
        chart.ToSvg().ShouldContain("pump &lt;b&gt;&quot;A&quot; &amp; B&lt;/b&gt; gnp.x]]&gt; --&gt; {0}");
        chart.ToSvg().ShouldNotContain("<b>");
        chart.ToSvg().ShouldAllBe(letter => letter == '\n' || !char.IsControl(letter));
        Turns().IsMatch(chart.ToSvg()).ShouldBeFalse();
    }

    [Theory]
    [InlineData(0.5, 450, 260)]
    [InlineData(1, 900, 520)]
    [InlineData(2, 1800, 1040)]
    public void A_picture_has_the_size_that_was_asked_for_and_shows_words_and_data(double scale, int width, int height)
    {
        using var picture = SKBitmap.Decode(TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber).ToPng(scale));

        (picture.Width, picture.Height).ShouldBe((width, height));
        int Dark(double left, double top, double right, double bottom) =>
            Enumerable
                .Range((int)(left * scale), (int)((right - left) * scale))
                .Sum(x =>
                    Enumerable
                        .Range((int)(top * scale), (int)((bottom - top) * scale))
                        .Count(y => picture.GetPixel(x, y).Red < 120)
                );
        Dark(12, 12, 400, 34).ShouldBeGreaterThan((int)(80 * scale * scale), "the title");
        Dark(0, 0, 900, 8).ShouldBe(0, "the margin");
        picture.GetPixel(2, 2).ShouldBe(SKColors.White);
    }

    [Fact]
    public void Another_size_is_another_drawing_of_the_same()
    {
        var chart = TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber).WithSize(640, 400);

        (chart.Width, chart.Height).ShouldBe((640, 400));
        XDocument.Parse(chart.ToSvg()).Root!.Attribute("viewBox")!.Value.ShouldBe("0 0 640 400");
        Should
            .Throw<ArgumentOutOfRangeException>(() => chart.WithSize(100, 400))
            .Message.ShouldContain("width is 100 pixels; allowed: 480 to 4000 pixels");
        Should.Throw<ArgumentOutOfRangeException>(() => chart.ToPng(9)).Message.ShouldContain("allowed: 0.5 to 4");
    }

    /// <summary>The words of a chart are texts with generic families to fall back on, so that a machine without the first typeface loses none.</summary>
    [Fact]
    public void The_words_are_texts_with_a_stack_of_typefaces()
    {
        var root = XDocument.Parse(TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber).ToSvg()).Root!;

        var group = root.Elements(Svg + "g").Last();
        group.Attribute("font-family")!.Value.ShouldEndWith(", sans-serif");
        group
            .Elements(Svg + "text")
            .Select(text => text.Value)
            .ShouldBe(TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber).Words());
    }

    [GeneratedRegex(
        @"\b(Now|UtcNow|Today|TimeZoneInfo|ToLocalTime|LocalDateTime|CurrentCulture|CurrentUICulture|Environment|Random|Stopwatch|TimeProvider)\b",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex OfTheMachine();

    [GeneratedRegex(" id=\"(?<id>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Identifier();

    [GeneratedRegex(@"url\(#(?<id>[^)]+)\)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Reference();

    [GeneratedRegex("[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]", RegexOptions.None, 1000)]
    private static partial Regex Turns();
}
