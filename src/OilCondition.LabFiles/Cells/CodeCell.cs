using OilCondition.Cleanliness;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>A cell with a code after ISO 4406: readings of up to three particle sizes.</summary>
internal static class CodeCell
{
    private static readonly Measurand[] Sizes = [Measurands.Particles4, Measurands.Particles6, Measurands.Particles14];

    /// <summary>The readings of a code.</summary>
    /// <remarks>
    /// A number stands for about its upper limit, as scale numbers do everywhere here; <c>>28</c> for more than the table's end, <c>≥</c> for at least
    /// the number's lower limit. What is too numerous to count, <c>*</c>, is at least as much as the next larger size. <c>-</c> is no reading.
    /// </remarks>
    public static bool TryRead(ReadOnlySpan<char> text, out IReadOnlyList<CodeReading> readings, out string reason)
    {
        readings = [];
        var written = Bare(text);
        if (!CleanlinessCode.TryParse(written, out var code))
        {
            reason =
                "not a code after ISO 4406 such as 18/16/13, -/16/13, */19/14 or 14/12/>=7; allowed are numbers from 0 to 28 that do not rise with size";
            return false;
        }

        readings = [.. Of(code)];
        reason = "";
        return true;
    }

    private static IEnumerable<CodeReading> Of(CleanlinessCode code)
    {
        ScaleNumber[] numbers = [code.At4, code.At6, code.At14];
        for (var i = 0; i < numbers.Length; i++)
        {
            // Counts are cumulative: of the smaller size there are at least as many as of the larger one.
            var larger = numbers.Skip(i + 1).FirstOrDefault(number => number.HasNumber);
            if (numbers[i].HasNumber)
            {
                yield return new CodeReading(Sizes[i], Of(numbers[i]), numbers[i].Number);
            }
            else if (numbers[i] == ScaleNumber.TooNumerous && larger.HasNumber)
            {
                yield return new CodeReading(
                    Sizes[i],
                    new Reading(Iso4406.LowerLimitPerMillilitre(larger.Number), Qualifier.GreaterThan),
                    null
                );
            }
        }
    }

    private static Reading Of(ScaleNumber number) =>
        number.Number > Iso4406.HighestScaleNumber || number.IsFewCounted
            ? new Reading(Iso4406.LowerLimitPerMillilitre(number.Number), Qualifier.GreaterThan)
            : new Reading(Iso4406.UpperLimitPerMillilitre(number.Number), Qualifier.Approximately);

    /// <summary>Without the standard's name before it, as in 'ISO 18/16/13'.</summary>
    private static string Bare(ReadOnlySpan<char> text)
    {
        var words = text.Length > PlainText.LongestCited ? "" : text.ToString();
        foreach (var name in new[] { "ISO 4406", "ISO4406", "ISO" })
        {
            if (words.StartsWith(name, StringComparison.OrdinalIgnoreCase))
            {
                return words.Substring(name.Length).Trim(' ', ':');
            }
        }

        return words;
    }
}
