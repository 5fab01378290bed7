using UnitsNet;

namespace OilCondition.Water;

/// <summary>Saturation curves that have been published. All are insulating fluids; none is a hydraulic, turbine or gear oil.</summary>
/// <remarks>
/// Additives raise the saturation of formulated oils two to five times and more above the mineral curves (several sources,
/// qualitative). With a mineral curve in their place relative saturation and free water come out too high, and the level that a
/// vacuum reaches too low. They serve to learn, to compare and to check, and as a source of slopes.
/// </remarks>
public static class PublishedSaturationCurves
{
    /// <summary>Transformer mineral oil, log10 S = 7.0895 − 1567/T, 0 to 100 °C; 55 mg/kg at 20 °C, 243 at 60 °C.</summary>
    public static SaturationCurve TransformerMineralOil { get; } =
        Curve(
            "transformer mineral oil",
            7.0895,
            1567,
            SourceKind.Handbook,
            "public technical page with the table 22 to 772 mg/kg at 0 to 100 °C, and the pair in public transformer code; "
                + "attribution to Griffin 1988, IEEE C57.106 and IEC 60422 from memory"
        );

    /// <summary>Transformer mineral oil, log10 S = 7.42 − 1670/T; 53 mg/kg at 20 °C, 255 at 60 °C. No range was stated; 0 to 100 °C is taken.</summary>
    public static SaturationCurve TransformerMineralOilSteeper { get; } =
        Curve(
            "transformer mineral oil, steeper curve",
            7.42,
            1670,
            SourceKind.Handbook,
            "pair seen in a public transformer-oil evaluation note, no range stated; attribution to Oommen 1983-84 from memory"
        );

    /// <summary>Natural ester of the soya type, log10 S = 5.3318 − 684/T; 1000 mg/kg at 20 °C. From memory; 0 to 100 °C is taken.</summary>
    public static SaturationCurve SoyaEster { get; } =
        Curve("natural ester, soya type", 5.3318, 684, SourceKind.FromMemory, "attributed to Lewand 2004");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<SaturationCurve> All { get; } =
    [TransformerMineralOil, TransformerMineralOilSteeper, SoyaEster];

    private static SaturationCurve Curve(string name, double a, double bKelvin, SourceKind kind, string text) =>
        SaturationCurve.FromCoefficients(
            name,
            a,
            bKelvin,
            Temperature.FromDegreesCelsius(0),
            Temperature.FromDegreesCelsius(100),
            new Source(kind, text)
        );
}
