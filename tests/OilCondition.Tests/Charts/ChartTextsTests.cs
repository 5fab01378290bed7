extern alias charts;

using System.Globalization;
using System.Text.RegularExpressions;
using charts::OilCondition.Charts;
using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.Charts;

/// <summary>No word of a chart is fixed in code, German has all of them, and any can be replaced.</summary>
public partial class ChartTextsTests
{
    /// <summary>Latin letters in which English and other languages are written alike: units, standards, identifiers and what records name.</summary>
    private static readonly HashSet<string> NoWords = new(StringComparer.Ordinal)
    {
        "mg",
        "kg",
        "mgKOH",
        "mL",
        "mm",
        "min",
        "µm",
        "ISO",
        "UTC",
        "EUR",
        "RPVOT",
        "VG",
        "VDU",
        "HP",
        "TGB",
        "DTG",
        "GOV",
        "IGG",
        "CWP",
    };

    [Fact]
    public void Every_word_on_a_chart_comes_from_the_texts()
    {
        var texts = ChartTexts.Phrases.Aggregate(ChartTexts.English, (all, phrase) => all.With(phrase, Masked(phrase)));
        texts = Measurands
            .All.Select(measurand => measurand.Name)
            .Concat(
                Measurands
                    .All.Select(measurand => measurand.Unit)
                    .Where(unit => unit.Contains(' ', StringComparison.Ordinal))
            )
            .Concat(AllCharts.Decided.SelectMany(one => one.Options).Select(option => option.Name))
            .Concat(["vacuum dehydration", "water", "dirt", "oil ageing"])
            .Distinct(StringComparer.Ordinal)
            .Aggregate(texts, (all, name) => all.WithName(name, Masked(name)));
        var names = AllCharts.Assessments.Select(one => one.History.Machine.Name).ToList();

        var left = AllCharts
            .OfStation(new ChartOptions(texts))
            .SelectMany(one => one.Chart.Words().Append(one.Chart.Description))
            .Select(words => names.Aggregate(words, (all, name) => all.Replace(name, "", StringComparison.Ordinal)))
            .Where(words => !words.StartsWith("HP-", StringComparison.Ordinal))
            .SelectMany(words => Latin().Matches(words).Select(match => match.Value))
            .Where(word => !NoWords.Contains(word))
            .Distinct(StringComparer.Ordinal);

        left.ShouldBeEmpty();
    }

    [Fact]
    public void German_writes_its_own_words_numbers_and_dates()
    {
        var chart = TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber, new ChartOptions(ChartTexts.German));

        chart.Title.ShouldBe("M1 invented machine: Säurezahl");
        chart.Description.ShouldStartWith(
            "0,224 mgKOH/g am 01.01.2026: normal; steigend, 0,01 mgKOH/g in 30 Tagen (13 Messwerte)."
        );
        chart.Words().ShouldContain("0,30");
        chart.Words().ShouldContain("Alarm über 0,4 mgKOH/g");
        chart.Words().ShouldContain("Datum, UTC+00:00");
    }

    /// <summary>The words of a language are the same text in no phrase but those that are spelled alike in both.</summary>
    [Fact]
    public void German_has_every_phrase_and_measurand_of_its_own()
    {
        var german = ChartTexts.German;
        string[] alike = ["date, UTC{0}", "normal", "sensor", "signal", "titration"];

        ChartTexts
            .Phrases.Where(phrase => Letter().IsMatch(phrase.Replace("ISO", "", StringComparison.Ordinal)))
            .Where(phrase =>
                german.Say(phrase, "x", "x", "x", "x") == ChartTexts.English.Say(phrase, "x", "x", "x", "x")
            )
            .ShouldBeSubsetOf(alike);
        Measurands
            .All.Where(measurand => german.Name(measurand.Name) == measurand.Name)
            .Select(measurand => measurand.Id)
            .ShouldBe(["rpvot"]);
    }

    [Fact]
    public void A_translation_has_the_figures_of_its_phrase()
    {
        // With refuses other places for figures; German goes through it as a user's own words do.
        foreach (var phrase in ChartTexts.Phrases)
        {
            var holes = Hole().Matches(phrase).Select(match => match.Value).ToHashSet();
            Hole()
                .Matches(ChartTexts.German.Say(phrase, "{0}", "{1}", "{2}", "{3}"))
                .Select(match => match.Value)
                .ToHashSet()
                .SetEquals(holes)
                .ShouldBeTrue(phrase);
        }
    }

    [Fact]
    public void A_phrase_and_a_name_can_be_replaced_and_the_texts_stay_as_they_were()
    {
        var own = ChartTexts.English.With("alarm above {0}", "stop above {0}").WithName("acid number", "TAN");

        var chart = TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber, new ChartOptions(own));

        chart.Title.ShouldBe("M1 invented machine: TAN");
        chart.Words().ShouldContain("stop above 0.4 mgKOH/g");
        TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber).Words().ShouldContain("alarm above 0.4 mgKOH/g");
    }

    [Fact]
    public void Forms_of_numbers_and_dates_can_be_chosen()
    {
        var numbers = new NumberFormatInfo { NumberDecimalSeparator = "·" };
        var own = ChartTexts.English.WithFormats(numbers, "MM/dd/yyyy", "MM/yyyy", "hh:mm tt");

        var chart = TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber, new ChartOptions(own));

        chart.Description.ShouldStartWith("0·224 mgKOH/g on 01/01/2026");
        own.ToString().ShouldBe("en, 12/31/2026, 0·5");
    }

    [Fact]
    public void What_cannot_be_replaced_is_refused_with_its_reason()
    {
        Should
            .Throw<ArgumentException>(() => ChartTexts.English.With("alarms", "x"))
            .Message.ShouldStartWith("phrase is 'alarms'; allowed: one of ChartTexts.Phrases.");
        Should
            .Throw<ArgumentException>(() => ChartTexts.English.With("alarm above {0}", "stop"))
            .Message.ShouldStartWith("text has no place for a figure, the phrase 'alarm above {0}' has {0}");
        Should
            .Throw<ArgumentException>(() => ChartTexts.English.With("alarm", " "))
            .Message.ShouldStartWith("text is blank");
        Should
            .Throw<ArgumentException>(() =>
                ChartTexts.English.WithFormats(NumberFormatInfo.InvariantInfo, "%", "MM", "HH")
            )
            .Message.ShouldStartWith("datePattern is '%'");
        Should
            .Throw<ArgumentOutOfRangeException>(() => new ChartOptions(utcOffset: TimeSpan.FromHours(20)))
            .Message.ShouldStartWith("utcOffset is 20 h; allowed: -14 to 14 h");
        Should
            .Throw<ArgumentOutOfRangeException>(() => new ChartOptions(utcOffset: TimeSpan.FromSeconds(61)))
            .Message.ShouldStartWith("utcOffset is 00:01:01; allowed: whole minutes");
    }

    [Fact]
    public void What_a_caller_holds_prints_itself()
    {
        new ChartOptions(ChartTexts.German, ChartUnits.UsCustomary)
            .ToString()
            .ShouldBe("900 × 520 pixels, us customary, de");
        ChartTexts.German.ToString().ShouldBe("de, 31.12.2026, 0,5");
        TrendChart
            .Of(Drawn.Rising(alarm: 0.2), Measurands.AcidNumber)
            .ToString()
            .ShouldStartWith("M1 invented machine: acid number. 0.224 mgKOH/g on 2026-01-01: alarm;");
    }

    /// <summary>Small letters in an alphabet that no unit and no name here is written in.</summary>
    private static string Masked(string phrase) => Letter().Replace(phrase, "ж");

    [GeneratedRegex("[A-Za-z]", RegexOptions.None, 1000)]
    private static partial Regex Letter();

    [GeneratedRegex("[A-Za-zµ]{2,}", RegexOptions.None, 1000)]
    private static partial Regex Latin();

    [GeneratedRegex(@"\{\d\}", RegexOptions.None, 1000)]
    private static partial Regex Hole();
}
