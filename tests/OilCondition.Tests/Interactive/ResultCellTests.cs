using System.Globalization;
using System.Xml.Linq;
using OilCondition.Cleanup;
using OilCondition.Interactive;
using OilCondition.Statistics;
using OilCondition.Tests.Advice.Options;
using OilCondition.Tests.Charts;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Interactive;

/// <summary>Each cell of a view holds the figure of its heading: held against the result itself, figure by figure.</summary>
public class ResultCellTests
{
    private const string Floor = "floor, in the unit of the readings";

    private static XElement Parsed(object result) => XElement.Parse(ResultHtml.Of(result));

    private static string Text(object result) =>
        string.Join(" | ", Parsed(result).DescendantNodes().OfType<XText>().Select(text => text.Value));

    /// <summary>The rows of the table that has headings.</summary>
    private static List<string[]> Rows(object result) =>
        [
            .. Parsed(result)
                .Descendants("table")
                .Where(table => table.Element("thead") is not null)
                .Elements("tbody")
                .Elements("tr")
                .Select(row => row.Elements("td").Select(cell => cell.Value).ToArray()),
        ];

    private static string Figure(object result, string name) =>
        Parsed(result)
            .Descendants("tr")
            .Single(row =>
                row.Element("td") is not null
                && row.Element("th")?.Value.StartsWith(name, StringComparison.Ordinal) == true
            )
            .Element("td")!
            .Value;

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>Cells have three figures, or the whole per cent.</summary>
    private static void ShouldTell(string cell, double value) =>
        Number(cell).ShouldBe(value, Math.Max(0.51 * (value > 1000 ? 1 : 0), 0.006 * Math.Abs(value)));

    [Fact]
    public void A_comparison_has_the_figures_of_each_row_and_none_for_what_is_ruled_out()
    {
        var comparison = CleanupJob.Job.Compare();
        comparison.Rows.ShouldContain(row =>
            row.MeetsTarget && row.Heat.KilowattHours > 0 && row.Electricity.KilowattHours > 0
        );
        comparison.Rows.ShouldContain(row => row.NewOil.Liters > 0);
        comparison.Rows.ShouldContain(row => !row.MeetsTarget);

        var rows = Rows(comparison);

        for (var i = 0; i < rows.Count; i++)
        {
            var (row, cells) = (comparison.Rows[i], rows[i]);
            cells[0].ShouldBe(row.Treatment.Name);
            cells[3].ShouldBe($"{Math.Round(row.Band!.Reached.Percent):0} % of the cases");
            ShouldTell(cells[4], row.WaterFloor.PartsPerMillion);
            if (row.MeetsTarget)
            {
                ShouldTell(cells[5], (row.Heat + row.Electricity).KilowattHours);
                ShouldTell(cells[6], row.NewOil.Liters);
            }
            else
            {
                cells[5..].ShouldBe(["", ""]);
            }
        }

        Text(comparison).ShouldContain("Quickest: ");
    }

    [Fact]
    public void A_decision_has_the_figures_of_each_option_and_none_for_what_is_ruled_out()
    {
        // Of the station, and one that comes too late: an alarm may stand for seven days, and the unit comes on the eighth.
        List<TreatmentDecision> decisions = [.. AllCharts.Decided.Where(one => one.Options.Count > 0), Late()];
        foreach (var decision in decisions)
        {
            var rows = Rows(decision);
            for (var i = 0; i < rows.Count; i++)
            {
                var (option, cells) = (decision.Options[i], rows[i]);
                cells[1].ShouldBe(option.Name);
                if (!option.IsPossible || option.Assessment is null)
                {
                    cells[3..8].ShouldAllBe(cell => cell.Length == 0);
                    continue;
                }

                Number(cells[3].Replace(" %", "", StringComparison.Ordinal)).ShouldBe(option.Probability.Percent, 0.51);
                Number(cells[4].Replace(" %", "", StringComparison.Ordinal))
                    .ShouldBe(option.ProbabilityInTime.Percent, 0.51);
                cells[6].ShouldBe(option.DoneP90?.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) ?? "");
                if (option.Cost is { P50: { } cost } bill)
                {
                    cells[7].StartsWith("at least ", StringComparison.Ordinal).ShouldBe(!bill.IsComplete);
                    ShouldTell(cells[7].Replace("at least ", "", StringComparison.Ordinal).Split(' ')[0], cost);
                    cells[7].ShouldEndWith(bill.Currency);
                }
            }

            var text = Text(decision);
            var assumed = Parsed(decision)
                .Descendants("li")
                .Count(item => item.Value.StartsWith("Assumed: ", StringComparison.Ordinal));
            assumed.ShouldBe(decision.Figures.Count(one => one.IsAssumed));
            decision
                .Options.SelectMany(option => option.Assessment?.Cautions ?? [])
                .ShouldAllBe(caution => text.Contains(Sentences.English.Of(caution), StringComparison.Ordinal));
            Figure(decision, "if nothing is done").ShouldBe(string.Join("; ", decision.Waiting.ToString().Split('\n')));
            text.ShouldContain("), hours");
        }

        var options = decisions.SelectMany(one => one.Options).ToList();
        options.ShouldContain(option =>
            option.Probability.Percent > option.ProbabilityInTime.Percent && option.IsPossible
        );
        options.ShouldContain(option => option.DoneP90 != option.DoneP50);
        decisions.ShouldContain(one => one.Figures.Any(figure => !figure.IsAssumed));
    }

    [Fact]
    public void An_assessment_has_a_row_for_each_measurand_and_says_what_to_do_and_on_what_it_rests()
    {
        foreach (var assessment in AllCharts.Assessments)
        {
            var (rows, text) = (Rows(assessment), Text(assessment));
            rows.Count.ShouldBe(assessment.States.Count);
            for (var i = 0; i < rows.Count; i++)
            {
                var state = assessment.States[i];
                rows[i][0].ShouldBe(state.Measurand.Name);
                rows[i][1].ShouldBe(state.Latest is { } latest ? state.Measurand.Text(latest.Reading) : "");
                rows[i][2].ShouldBe(state.Latest?.At.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "");
                rows[i][5].ShouldBe(string.Join("; ", state.Lives.Select(life => Sentences.English.Of(state, life))));
            }

            foreach (
                var sentence in assessment
                    .Recommendations.Select(one => one.ToString())
                    .Concat(assessment.Problems.SelectMany(Sentences.English.Evidence))
                    .Concat(assessment.NextSample is { } next ? [Sentences.English.Of(next)] : Array.Empty<string>())
            )
            {
                text.ShouldContain(sentence.Trim());
            }
        }

        AllCharts.Assessments.ShouldContain(one => one.NextSample != null && one.Recommendations.Count > 0);
    }

    [Fact]
    public void A_curve_has_its_figures_and_says_what_makes_them_doubtful()
    {
        // The truth behind the readings: 50 + 550 exp(−t/8 h), with a scatter that is even, follows itself, grows with the level, or has one wild reading.
        var even = Curve(25, (i, _) => i % 2 == 0 ? 1 : -1);
        var slow = Curve(60, (i, _) => 6 * Math.Sin(i / 5.0));
        var relative = Curve(60, (i, level) => 0.1 * level * (i * 7 % 5 - 2));
        var wild = Curve(
            25,
            (i, _) =>
                i == 12 ? 200
                : i % 2 == 0 ? 1
                : -1
        );
        var early = Curve(5, (i, _) => i % 2 == 0 ? 20 : -20, hours: 0.01);
        CleanupCurve[] all = [even, slow, relative, wild, early];

        Figure(even, "at the first moment").ShouldStartWith("60");
        var ends = Figure(even, Floor).Split("; ")[1].Split(" to ");
        Number(ends[0]).ShouldBe(even.FloorInterval().Lower!.Value, 0.06);
        Number(ends[1].Split(' ')[0]).ShouldBe(even.FloorInterval().Upper!.Value, 0.06);
        Figure(wild, "readings used").ShouldBe($"{wild.Count}, 0, 1");
        foreach (var curve in all)
        {
            var text = Text(curve);
            text.Contains("What the readings tell: ", StringComparison.Ordinal)
                .ShouldBe(curve.Status != ExponentialDecayStatus.Determined);
            text.Contains("Intervals cover less often", StringComparison.Ordinal).ShouldBe(curve.CoverageInDoubt);
            text.Contains("The residuals speak for", StringComparison.Ordinal)
                .ShouldBe(curve.SuggestedNoise != curve.Options.Noise);
            Figure(curve, Floor)
                .Contains("less often", StringComparison.Ordinal)
                .ShouldBe(curve.FloorInterval().CoverageInDoubt);
        }

        all.Select(curve => curve.Status == ExponentialDecayStatus.Determined)
            .ShouldBe([true, true, true, true, false]);
        all.Count(curve => curve.CoverageInDoubt).ShouldBeInRange(1, 4);
        all.Count(curve => curve.FloorInterval().CoverageInDoubt).ShouldBeInRange(1, 4);
    }

    [Fact]
    public void A_saturation_fit_has_its_errors_and_the_band_of_its_curve()
    {
        var fit = AllCharts.Fit();
        var rows = Rows(fit);

        Number(Figure(fit, "A").Split("error ")[1]).ShouldBe(fit.AStandardError, 0.006 * fit.AStandardError);
        Number(Figure(fit, "B, K").Split("error ")[1])
            .ShouldBe(fit.BStandardErrorKelvin, 0.006 * fit.BStandardErrorKelvin);
        // By hand: the logarithms of measured over curve, squared and summed, over three degrees of freedom.
        var squares = rows.Sum(row => Math.Pow(Math.Log(Number(row[1]) / Number(row[2])), 2));
        Number(Figure(fit, "scatter of a measurement")).ShouldBe(100 * Math.Sqrt(squares / 3), 0.3);
        foreach (var row in rows)
        {
            var at = Temperature.FromDegreesCelsius(Number(row[0]));
            var band = fit.BandAt(at, 0.9, BandKind.Mean);
            ShouldTell(row[2], fit.Curve.SaturationAt(at).Content.PartsPerMillion);
            ShouldTell(row[3].Split(" to ")[0], band.Lower.Content.PartsPerMillion);
            ShouldTell(row[3].Split(" to ")[1], band.Upper.Content.PartsPerMillion);
            Number(row[4]).ShouldBe(Number(row[1]) / Number(row[2]), 0.01);
        }
    }

    [Fact]
    public void A_trend_has_its_chance_and_what_was_left_out_and_why()
    {
        double[] level = [.. Enumerable.Range(0, 20).Select(i => i == 9 ? 3 : 0.1 + 0.01 * (i * 7 % 5))];
        var wild = SeriesTrend.Of(AllCharts.Values(Measurands.AcidNumber, level));
        wild.Assessment.PValue.ShouldBeInRange(0.001, 1);

        Number(Figure(wild, "chance of as clear")).ShouldBe(wild.Assessment.PValue, 0.006);
        var weak = SeriesTrend.Of(
            AllCharts.Values(
                Measurands.AcidNumber,
                [.. Enumerable.Range(0, 12).Select(i => 0.1 + 0.003 * i + 0.01 * (i * 7 % 5))]
            )
        );
        weak.Assessment.PValue.ShouldBeInRange(0.002, 0.15);
        ShouldTell(Figure(weak, "chance of as clear"), weak.Assessment.PValue);
        Figure(wild, "outliers").ShouldBe("1");
        Figure(wild, "changes of level").ShouldBe("0");
        Figure(wild, "readings judged").ShouldBe("19");
        Figure(wild, "why so").ShouldContain("outliers left out");
        Figure(Drawn.Rising().States[0].Trend, "why so").ShouldBe("enough readings");
        var counts = SeriesTrend.Of(
            AllCharts.Values(
                Measurands.Particles4,
                [.. Enumerable.Range(0, 20).Select(i => 100 * Math.Exp(0.1 * i + 0.01 * (i % 3)))]
            )
        );
        Figure(counts, "growth per day, of the natural logarithm").ShouldStartWith("0.014");
        foreach (var state in AllCharts.Assessments.SelectMany(one => one.States))
        {
            Figure(state, "set aside").ShouldBe($"{state.Trend.Judged.LeftOut.Count}");
        }

        AllCharts
            .Assessments.SelectMany(one => one.States)
            .ShouldContain(state => state.Trend.Judged.LeftOut.Count > state.Trend.Assessment.Changes.Count);
    }

    [Fact]
    public void A_life_of_a_measurand_without_a_unit_has_its_picture_and_no_blank_after_its_figure()
    {
        var index = Measurands.ViscosityIndex;
        var life = Drawn
            .Assess(
                index,
                Enumerable.Range(0, 13).Select(i => (30.0 * i, new Reading(100 - i))),
                [Drawn.Below(index, null, 60)]
            )
            .States[0]
            .Lives.Single();

        Figure(life, "limit, not to be fallen below").ShouldBe("60");
        Parsed(life).Elements().Count(element => element.Name.LocalName == "svg").ShouldBe(1);
    }

    [Fact]
    public void A_level_of_next_to_nothing_has_its_figures()
    {
        var small = CleanupCurve.Fit(
            [.. Enumerable.Range(0, 25).Select(i => Invented.Start.AddHours(i))],
            [.. Enumerable.Range(0, 25).Select(i => 1e-13 * (50 + 550 * Math.Exp(-i / 8.0) + (i % 2 == 0 ? 1 : -1)))]
        );
        Figure(small, Floor).ShouldStartWith("5.0");
        Figure(small, Floor).ShouldContain("E-12");
    }

    [Fact]
    public void Hostile_names_stay_texts_in_every_part_of_a_view()
    {
        const string Name = "x\u202E<b>\u2066]]>\u0007 \uD800";
        var odd = new Measurand("odd", Name, "u\u202E", LimitSide.Upper, NaturalScale.Linear, 0, 1000, "m\u202E");
        var assessment = Drawn.Assess(
            odd,
            Enumerable.Range(0, 13).Select(i => (30.0 * i, new Reading(10 + i, Qualifier.None, "m\u202E"))),
            [Drawn.Above(odd, 15, 20)],
            machine: Drawn.Machine("M\u202E", Name)
        );
        assessment.Problems.ShouldNotBeEmpty();
        object[] results =
        [
            assessment,
            assessment.States[0],
            assessment.States[0].Trend,
            assessment.States[0].Lives.Single(),
            AllCharts.Compared(),
        ];

        foreach (var result in results)
        {
            var html = ResultHtml.Of(result);
            html.ShouldNotContain("<b>");
            foreach (var letter in "\u202E\u2066\u2069\u0007")
            {
                html.ShouldNotContain(letter.ToString());
            }

            XElement.Parse(html).Name.LocalName.ShouldBe("div");
        }
    }

    [Fact]
    public void Headings_say_what_they_head()
    {
        var html = Parsed(CleanupJob.Job.Compare());

        html.Descendants("thead").Descendants("th").ShouldAllBe(cell => cell.Attribute("scope")!.Value == "col");
        Parsed(Drawn.Rising().States[0])
            .Descendants("tbody")
            .Descendants("th")
            .ShouldAllBe(cell => cell.Attribute("scope")!.Value == "row");
    }

    private static TreatmentDecision Late() =>
        new InventedYard
        {
            Equipment = InventedYard.Vacuum.Replace("\"connectHours\": 3", "\"leadDays\": 8", StringComparison.Ordinal),
            Tank = "\"ambientCelsius\": 15, \"lossWattPerKelvin\": 0",
            Prices = "\"perKilowattHour\": 0.2",
            Readings = [.. InventedYard.Monthly(Measurands.WaterContent, 600, 600, 600)],
        }.Decision();

    private static CleanupCurve Curve(int count, Func<int, double, double> scatter, double hours = 1)
    {
        double Level(int i) => 50 + 550 * Math.Exp(-i * hours / 8);
        return CleanupCurve.Fit(
            [.. Enumerable.Range(0, count).Select(i => Invented.Start.AddHours(i * hours))],
            [.. Enumerable.Range(0, count).Select(i => Level(i) + scatter(i, Level(i)))]
        );
    }
}
