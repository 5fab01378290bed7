using System.Globalization;
using System.Text;

namespace DeskCalculations;

/// <summary>A sheet of headings and lines: what was asked, and the answer as the library prints it.</summary>
public sealed class Sheet(string preamble)
{
    private const int Width = 100;
    private const int LabelWidth = 36;

    private readonly StringBuilder text = new StringBuilder(preamble).Append('\n');

    /// <summary>A new topic.</summary>
    public void Topic(string name) => text.Append('\n').Append(name.ToUpperInvariant()).Append('\n');

    /// <summary>One question with its answer, on a line of its own where both are too wide for one.</summary>
    public void Line(string label, object? answer)
    {
        var words = Convert.ToString(answer, CultureInfo.InvariantCulture) ?? "";
        text.Append("  ")
            .Append(label.PadRight(LabelWidth))
            .Append(2 + LabelWidth + words.Length > Width ? "\n        " : "")
            .Append(words)
            .Append('\n');
    }

    /// <summary>One question with a number and its unit.</summary>
    public void Line(string label, FormattableString answer) =>
        Line(label, (object)FormattableString.Invariant(answer));

    /// <inheritdoc/>
    public override string ToString() => text.ToString();
}
