extern alias charts;

using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using charts::OilCondition.Charts;
using OilCondition.Tests.Text;
using OilCondition.Text;

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
        "mm",
        "min",
        "µm",
        "ISO",
        "UTC",
        "EUR",
        "VG",
        "HP",
    };

    [Fact]
    public void Every_word_on_a_chart_comes_from_the_texts()
    {
        var sentences = Words("sentences.en.json", typeof(Sentences))
            .Where(one => !one.Key.StartsWith("format.", StringComparison.Ordinal))
            .Concat(Measurands.All.Select(one => KeyValuePair.Create("measurand." + one.Id, one.Name)))
            .Append(KeyValuePair.Create("unit.per mL", "per mL"));
        var texts = ChartTexts.Parse(
            Json(Words("texts.en.json", typeof(ChartTexts)).Select(Masked)),
            Sentences.Parse(Json(sentences.Select(Masked)))
        );
        var names = AllCharts
            .Assessments.SelectMany(one => new[] { one.History.Machine.Name, one.History.Machine.Oil.Name })
            .Concat(AllCharts.Decided.SelectMany(one => one.Options).Select(option => option.Name))
            .OrderByDescending(name => name.Length)
            .ToList();

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

        chart.Title.ShouldBe("M1 invented machine: Neutralisationszahl");
        chart.Description.ShouldStartWith(
            "0,224 mgKOH/g am 01.01.2026: normal; steigend, 0,01 mgKOH/g in 30 Tagen (13 Werte)."
        );
        chart.Words().ShouldContain("0,30");
        chart.Words().ShouldContain("Alarm über 0,4 mgKOH/g");
        chart.Words().ShouldContain("Datum, UTC+00:00");
        chart.Words().ShouldContain("07.2025");
    }

    /// <summary>The words of a language are the same text under no key but those that are spelled alike in both.</summary>
    [Fact]
    public void German_has_every_phrase_of_its_own()
    {
        string[] alike = ["mark.sensor", "mark.titration", "control.signal"];
        var (english, german) = (ChartTexts.English, ChartTexts.German);

        Words("texts.de.json", typeof(ChartTexts)).Select(one => one.Key).ShouldBe(english.Keys, ignoreOrder: true);
        english
            .Keys.Where(key =>
                Letter().IsMatch(Place().Replace(english[key], "").Replace("ISO", "", StringComparison.Ordinal))
            )
            .Where(key => string.Equals(german[key], english[key], StringComparison.OrdinalIgnoreCase))
            .ShouldBeSubsetOf(alike);
    }

    [Fact]
    public void Words_names_and_forms_can_be_replaced_and_the_texts_stay_as_they_were()
    {
        var sentences = Sentences.Parse(
            """{ "language": "en-US", "texts": { "measurand.acid-number": "TAN", "format.decimal": "·", "format.date": "MM/dd/yyyy", "format.month": "MM/yyyy", "format.time-of-day": "hh:mm tt" } }"""
        );
        var own = ChartTexts.Parse(
            """{ "language": "en-US", "texts": { "limit.alarm-above": "stop above {limit}" } }""",
            sentences
        );

        var chart = TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber, new ChartOptions(own));

        chart.Title.ShouldBe("M1 invented machine: TAN");
        chart.Description.ShouldStartWith("0·224 mgKOH/g on 01/01/2026");
        chart.Words().ShouldContain("stop above 0·4 mgKOH/g");
        chart.Words().ShouldContain("0·30");
        chart.Words().ShouldContain("07/2025");
        own.Language.ShouldBe("en-US");
        own.Sentences.ShouldBeSameAs(sentences);
        TrendChart.Of(Drawn.Rising(), Measurands.AcidNumber).Words().ShouldContain("alarm above 0.4 mgKOH/g");
    }

    [Fact]
    public void What_cannot_be_replaced_is_refused_with_its_reason()
    {
        Should
            .Throw<FormatException>(() =>
                ChartTexts.Parse(
                    """{ "language": "en", "texts": { "limit.alarms": "x", "limit.alarm-above": "stop" } }"""
                )
            )
            .Message.ShouldBe(
                "In the words of charts: 2 faults: 'limit.alarm-above' has no places; expected are {limit}; 'limit.alarms' is no key of it."
            );
        Should
            .Throw<FormatException>(() => Sentences.Parse("""{ "language": "en", "texts": { "format.month": "%" } }"""))
            .Message.ShouldBe(
                "In a set of sentences: 'format.month' is '%'; expected is a pattern of dates such as yyyy-MM-dd."
            );
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
        var texts = ChartTexts.German.In(Sentences.Units.UsCustomary);

        new ChartOptions(texts).ToString().ShouldBe("900 × 520 pixels, de, US customary");
        texts.In(Sentences.Units.Si).ToString().ShouldBe("de, SI");
        TrendChart
            .Of(Drawn.Rising(alarm: 0.2), Measurands.AcidNumber)
            .ToString()
            .ShouldStartWith("M1 invented machine: acid number. 0.224 mgKOH/g on 2026-01-01: alarm;");
    }

    private static IEnumerable<KeyValuePair<string, string>> Words(string resource, Type of) =>
        JsonNode.Parse(PhraseBook.Resource(of.Assembly, resource))!["texts"]!
            .AsObject()
            .Select(pair => KeyValuePair.Create(pair.Key, (string)pair.Value!));

    private static string Json(IEnumerable<KeyValuePair<string, string>> texts) =>
        JsonSerializer.Serialize(new { language = "zh", texts = new Dictionary<string, string>(texts) });

    /// <summary>Small letters in an alphabet that no unit and no name here is written in, but for what stands in braces.</summary>
    private static KeyValuePair<string, string> Masked(KeyValuePair<string, string> phrase) =>
        KeyValuePair.Create(phrase.Key, Pattern.Of(@"(?<!\{[a-zA-Z]*)[A-Za-z]").Replace(phrase.Value, "ж"));

    [GeneratedRegex("[A-Za-z]", RegexOptions.None, 1000)]
    private static partial Regex Letter();

    [GeneratedRegex("[A-Za-zµ]{2,}", RegexOptions.None, 1000)]
    private static partial Regex Latin();

    [GeneratedRegex(@"\{[a-zA-Z]+\}", RegexOptions.None, 1000)]
    private static partial Regex Place();
}
