using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Text;

namespace OilCondition.Tests.Text;

/// <summary>What is written, character by character, beside the writer of the framework.</summary>
public class JsonTextTests
{
    private static readonly JsonWriterOptions SameForm = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Quotes, controls, separators of lines, letters of other scripts, and halves of characters without the other half.</summary>
    private static readonly Gen<string> Words = Gen.OneOf(
            Gen.Char,
            Gen.Char[' ', '~'],
            Gen.Char["\"\\/<'\n\t\0\u007f\u0085\u2028é\ud83d\ude00"]
        )
        .Array[0, 12]
        .Select(characters => new string(characters));

    private static string Ours(string name, string text, int count) =>
        JsonText.Write(
            JsonFormat.Assessment,
            json =>
            {
                json.WriteString(name, text);
                json.WriteStartObject(text);
                json.WriteBoolean("flag", count > 0);
                json.WriteEndObject();
                json.WriteStartArray("list");
                json.WriteStringValue(text);
                json.WriteStartObject();
                json.WriteNumber(name, count);
                json.WriteStartArray("empty");
                json.WriteEndArray();
                json.WriteEndObject();
                json.WriteStartObject();
                json.WriteEndObject();
                json.WriteEndArray();
            }
        );

    private static string OfFramework(string name, string text, int count)
    {
        using var stream = new MemoryStream();
        using var json = new Utf8JsonWriter(stream, SameForm);
        json.WriteStartObject();
        json.WriteString("format", JsonFormat.Assessment.Id);
        json.WriteString("version", JsonFormat.Assessment.Version);
        json.WriteString(name, text);
        json.WriteStartObject(text);
        json.WriteBoolean("flag", count > 0);
        json.WriteEndObject();
        json.WriteStartArray("list");
        json.WriteStringValue(text);
        json.WriteStartObject();
        json.WriteNumber(name, count);
        json.WriteStartArray("empty");
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteStartObject();
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
        json.Flush();
        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    [Fact]
    public void A_document_is_as_the_framework_writes_it_whatever_names_and_texts_hold() =>
        Gen.Select(Words, Words, Gen.Int)
            .Holds((name, text, count) => Ours(name, text, count).ShouldBe(OfFramework(name, text, count)), iter: 2000);

    [Fact]
    public void A_document_may_be_longer_than_those_before_it()
    {
        foreach (var length in new[] { 10, 100_000, 1_000_000, 10 })
        {
            var text = new string('x', length) + '"';
            Ours("name", text, length).ShouldBe(OfFramework("name", text, length));
        }
    }

    [Fact]
    public void Moments_have_seconds_and_offset() =>
        Gen.Select(Gen.Long[0, 3_000_000_000], Gen.Int[-14 * 60, 14 * 60])
            .Holds(
                (seconds, minutes) =>
                {
                    var at = new DateTimeOffset(1950, 1, 1, 0, 0, 0, TimeSpan.FromMinutes(minutes)).AddSeconds(seconds);
                    JsonText
                        .Write(JsonFormat.Assessment, json => json.WriteMoment("at", at))
                        .ShouldContain(
                            $"\"at\": \"{at.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture)}\"\n"
                        );
                },
                iter: 1000
            );

    [Fact]
    public void Figures_have_seven_digits() =>
        Gen
            .Double.Where(value => !double.IsNaN(value) && !double.IsInfinity(value))
            .Holds(value =>
                JsonText
                    .Write(JsonFormat.Assessment, json => json.WriteFigure("value", value))
                    .ShouldContain($"\"value\": {value.ToString("G7", CultureInfo.InvariantCulture)}\n")
            );
}
