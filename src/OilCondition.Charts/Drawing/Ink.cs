using ScottPlot;

namespace OilCondition.Charts.Drawing;

/// <summary>The inks of the charts: the palette of Okabe and Ito, which those with a colour vision deficiency tell apart, and greys.</summary>
/// <remarks>
/// M. Okabe, K. Ito: Color Universal Design, How to make figures and presentations that are friendly to colorblind people, 2002, revised 2008, its table
/// of eight colours (RGB values seen in public copies). Colours carry no verdict; what lies side by side differs in
/// luminance, and in shape or line as well.
/// </remarks>
internal sealed class Ink
{
    private Ink(string hex, double opacity = 1)
    {
        Hex = hex;
        Opacity = opacity;
    }

    public static Ink White { get; } = new("#FFFFFF");

    public static Ink Black { get; } = new("#000000");

    public static Ink Text { get; } = new("#1A1A1A");

    public static Ink Orange { get; } = new("#E69F00");

    public static Ink SkyBlue { get; } = new("#56B4E9");

    public static Ink Green { get; } = new("#009E73");

    public static Ink Blue { get; } = new("#0072B2");

    public static Ink Vermilion { get; } = new("#D55E00");

    public static Ink Purple { get; } = new("#CC79A7");

    public static Ink Grey { get; } = new("#757575");

    public static Ink Grid { get; } = new("#E4E4E4");

    public static Ink Frame { get; } = new("#4D4D4D");

    public static Ink PaleBlue { get; } = new("#56B4E9", 0.3);

    public static Ink PaleGrey { get; } = new("#757575", 0.25);

    public string Hex { get; }

    /// <summary>1 covers what is below.</summary>
    public double Opacity { get; }

    public Color Color => Color.FromHex(Hex).WithAlpha(Opacity);

    /// <summary>Relative luminance of the ink on white paper, after WCAG 2.1: 0 black, 1 white.</summary>
    public double Luminance
    {
        get
        {
            var color = Color.FromHex(Hex);
            double Channel(byte value)
            {
                var share = (value * Opacity + 255 * (1 - Opacity)) / 255;
                return share <= 0.03928 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
            }

            return 0.2126 * Channel(color.R) + 0.7152 * Channel(color.G) + 0.0722 * Channel(color.B);
        }
    }
}
