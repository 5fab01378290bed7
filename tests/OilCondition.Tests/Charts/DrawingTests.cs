extern alias charts;

using charts::OilCondition.Charts;
using charts::OilCondition.Charts.Drawing;

namespace OilCondition.Tests.Charts;

/// <summary>Inks, axes and letters, apart from any chart.</summary>
public class DrawingTests
{
    /// <summary>
    /// RGB of the table of eight colours of Okabe and Ito, Color Universal Design (2002, revised 2008), as public copies
    /// give it alike, 'OkabeIto_black' of the R package colorblindr among them. Its eighth colour, yellow, is not used: it is hardly seen on white.
    /// </summary>
    [Fact]
    public void The_colours_are_those_of_okabe_and_ito()
    {
        (Ink Ink, int Red, int Green, int Blue)[] table =
        [
            (Ink.Black, 0, 0, 0),
            (Ink.Orange, 230, 159, 0),
            (Ink.SkyBlue, 86, 180, 233),
            (Ink.Green, 0, 158, 115),
            (Ink.Blue, 0, 114, 178),
            (Ink.Vermilion, 213, 94, 0),
            (Ink.Purple, 204, 121, 167),
        ];

        foreach (var (ink, red, green, blue) in table)
        {
            ((int)ink.Color.R, (int)ink.Color.G, (int)ink.Color.B).ShouldBe((red, green, blue));
        }
    }

    /// <summary>Black is 0, white is 1, and the green of sRGB alone is 0.7152 (WCAG 2.1, 'relative luminance').</summary>
    [Fact]
    public void Luminance_is_that_of_wcag()
    {
        Ink.Black.Luminance.ShouldBe(0);
        Ink.White.Luminance.ShouldBe(1, 1e-12);

        // Half of the light of white through a tenth of an ink: between the two.
        Ink.PaleBlue.Luminance.ShouldBeInRange(Ink.SkyBlue.Luminance, 1);
    }

    /// <summary>Pairs that lie side by side in one chart. In grey they must not be one: alarm and alert, reading and sensor, bar and bar, stretch and stretch.</summary>
    [Fact]
    public void What_lies_side_by_side_differs_in_grey()
    {
        (Ink, Ink)[] pairs =
        [
            (Ink.Vermilion, Ink.Orange),
            (Ink.Black, Ink.SkyBlue),
            (Ink.Black, Ink.Grey),
            (Ink.Black, Ink.Purple),
            (Ink.Black, Ink.Blue),
            (Ink.Blue, Ink.SkyBlue),
            (Ink.SkyBlue, Ink.PaleGrey),
            (Ink.Frame, Ink.White),
            (Ink.White, Ink.SkyBlue),
            (Ink.White, Ink.Blue),
            (Ink.PaleBlue, Ink.Blue),
            (Ink.PaleBlue, Ink.White),
        ];

        pairs.Where(pair => Math.Abs(pair.Item1.Luminance - pair.Item2.Luminance) < 0.12).ShouldBeEmpty();
    }

    [Fact]
    public void Round_numbers_stand_on_an_even_scale()
    {
        var axis = NumberAxis.Around("", [0.13, 0.42], false, ChartTexts.English);

        axis.Ticks(7).Select(tick => tick.Text).ShouldBe(["0.15", "0.20", "0.25", "0.30", "0.35", "0.40"]);
    }

    [Fact]
    public void A_scale_of_logarithms_has_its_powers_of_ten()
    {
        var axis = NumberAxis.Around("", [3, 40_000], true, ChartTexts.English);

        axis.Ticks(5).Select(tick => tick.Text).ShouldBe(["10", "100", "1000", "10000"]);
        axis.Ticks(5).Select(tick => tick.At).ShouldBe([1, 2, 3, 4]);
    }

    [Theory]
    [InlineData(0.05, 6, "2026-03-02 06:00|06:15|06:30|06:45|07:00")]
    [InlineData(4, 5, "2026-03-03|2026-03-04|2026-03-05|2026-03-06")]
    [InlineData(150, 6, "2026-04|2026-05|2026-06|2026-07")]
    [InlineData(3000, 6, "2028|2030|2032|2034")]
    public void Dates_stand_at_whole_hours_days_months_and_years(double days, int most, string expected)
    {
        var from = new DateTimeOffset(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);
        var axis = new TimeAxis(from, from.AddDays(days), TimeSpan.Zero, ChartTexts.English);

        axis.Ticks(most).Select(tick => tick.Text).ShouldBe(expected.Split('|'));
    }

    [Theory]
    [InlineData(1e-9)]
    [InlineData(1)]
    [InlineData(1e12)]
    public void An_axis_of_one_value_has_an_extent_and_ticks(double value)
    {
        foreach (var isLogarithmic in new[] { false, true })
        {
            var axis = NumberAxis.Around("", [value], isLogarithmic, ChartTexts.English);

            (axis.From < value && axis.To > value).ShouldBeTrue();
            axis.Ticks(6).Count.ShouldBeInRange(2, 20);
        }
    }

    [Fact]
    public void Words_are_broken_and_cut_to_their_width()
    {
        const string Text = "the quick brown fox jumps over the lazy dog";

        var lines = Lettering.Wrap(Text, 12, 100, 2);

        lines.Count.ShouldBe(2);
        lines.ShouldAllBe(line => Lettering.Width(line, 12) <= 100);
        lines[1].ShouldEndWith("…");
        string.Join(" ", Lettering.Wrap(Text, 12, 100, 9)).ShouldBe(Text);
        Lettering.Cut(new string('W', 300), 12, 50).Length.ShouldBeLessThan(8);
    }

    [Theory]
    [InlineData("a\u202Eb\u0000c", "abc")]
    [InlineData(" a\tb\r\nc ", "a b  c")]
    [InlineData("°C µm ≥ é", "°C µm ≥ é")]
    public void Texts_of_others_are_cleaned(string text, string expected) => CleanText.Of(text).ShouldBe(expected);

    [Fact]
    public void Half_a_character_is_replaced_and_a_whole_one_is_kept() =>
        CleanText.Of("\uD83D\uDE00 \uD83D!").ShouldBe("\uD83D\uDE00 \uFFFD!");
}
