using CsCheck;
using OilCondition.LabFiles;
using OilCondition.Limits;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Text;

/// <summary>Journals, limit sets and column maps: whatever a file holds, its reader answers with a FormatException or with what it read.</summary>
public class JsonFileTests
{
    private const string Entry = """
        { "alerts": [ { "key": "M1/undated/wear", "severity": "alert", "state": "STATE", "lastSeenAt": "2025-01-02T00:00:00+00:00",
          "sentence": "TEXT", "changes": [ { "kind": "raised", "at": "2025-01-01T00:00:00Z", "severity": "alert", "sentence": "s" } ] } ] }
        """;

    private static readonly string Limit = """
        { "name": "n", "limits": [ { "measurand": "water-content", "kind": "KIND", "unit": "%",
          "upper": { "alert": FIGURE }, "source": { "kind": "user-data", "text": "t" } } ] }
        """;

    private static string JournalText(string state, string sentence) =>
        Entry.Replace("STATE", state).Replace("TEXT", sentence);

    [Fact]
    public void Half_a_surrogate_pair_in_a_journal_is_a_fault_of_the_file()
    {
        Should.Throw<FormatException>(() => AlertJournal.Parse(JournalText("unacknowledged-active", "\\ud800")));
        Should.Throw<FormatException>(() => AlertJournal.Parse(JournalText("unacknowledged-active", "\ud800")));
    }

    [Theory]
    [InlineData("absolute", "1e999")]
    [InlineData("absolute", "1e308")]
    [InlineData("change-from-new", "1e308")]
    [InlineData("percent-change-from-new", "1e999")]
    [InlineData("own-history", "-1e999")]
    public void A_figure_beyond_all_numbers_is_a_fault_of_the_file_with_its_place(string kind, string figure) =>
        Should
            .Throw<FormatException>(() => LimitSet.Parse(Limit.Replace("KIND", kind).Replace("FIGURE", figure)))
            .Message.ShouldContain("$.limits[0].upper.alert");

    [Fact]
    public void Every_fault_of_a_journal_is_named_and_a_name_that_is_no_text_is_a_format()
    {
        var message = Should
            .Throw<FormatException>(() =>
                AlertJournal.Parse(
                    """{ "alerts": [ { "key": "a", "severity": "loud", "state": "normal", "raised": 3 } ] }"""
                )
            )
            .Message;
        message.ShouldContain("$.alerts[0].severity: 'loud'");
        message.ShouldContain("$.alerts[0].lastSeenAt: a text is expected");
        message.ShouldContain("$.alerts[0].sentence: a text is expected");
        foreach (var json in new[] { """{ "al\ud800erts": [] }""", """{ "\ud800": [] }""" })
        {
            Should.Throw<FormatException>(() => AlertJournal.Parse(json));
            Should.Throw<FormatException>(() => LimitSet.Parse(json));
            Should.Throw<FormatException>(() => ColumnMap.Parse(json));
        }
    }

    [Fact]
    public void Any_text_is_read_or_refused_as_a_format()
    {
        // Pieces of the grammar and of what breaks it, in any order, and cuts of whole files.
        string[] words =
        [
            "{",
            "}",
            "[",
            "]",
            "\"",
            ":",
            ",",
            "\"alerts\"",
            "\"limits\"",
            "\"name\"",
            "\"n\"",
            "1e999",
            "null",
            "\\ud800",
            "\ud800",
        ];
        var pieces = Gen.Int[0, words.Length - 1].Select(i => words[i]);
        var whole = new[]
        {
            JournalText("unacknowledged-active", "s"),
            Limit.Replace("KIND", "absolute").Replace("FIGURE", "1"),
        };
        var cut = Gen.Select(Gen.Int[0, whole.Length - 1].Select(i => whole[i]), Gen.Int[0, 300], Gen.Int[0, 9], pieces)
            .Select(
                (text, at, gone, put) =>
                {
                    var from = Math.Min(at, text.Length);
                    return text.Remove(from, Math.Min(gone, text.Length - from)).Insert(from, put);
                }
            );
        Gen.OneOf(Gen.String, pieces.Array[0, 12].Select(string.Concat), cut)
            .Holds(
                text =>
                {
                    OnlyFormat(() => AlertJournal.Parse(text));
                    OnlyFormat(() => LimitSet.Parse(text));
                    OnlyFormat(() => ColumnMap.Parse(text));
                },
                iter: 2000
            );
    }

    private static void OnlyFormat(Action read)
    {
        var thrown = Record.Exception(read);
        if (thrown is not null)
        {
            thrown.ShouldBeOfType<FormatException>();
        }
    }
}
