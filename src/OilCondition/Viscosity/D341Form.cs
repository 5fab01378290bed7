namespace OilCondition.Viscosity;

/// <summary>The two forms in which ASTM D341 ties a viscosity to its scale. Above 2 mm²/s they are the same within 0.04 %.</summary>
internal enum D341Form
{
    /// <summary>Z = v + 0.7 + exp(−1.47 − 1.84 v − 0.51 v²), with an inverse of its own (seen in reproduction).</summary>
    Simplified,

    /// <summary>
    /// Z = v + 0.7 + C − D + E − F + G − H, for thin liquids: C = exp(−1.14883 − 2.65868 v), D = exp(−0.0038138 − 12.5645 v),
    /// E = exp(5.46491 − 37.6289 v), F = exp(13.0458 − 74.6851 v), G = exp(37.4619 − 192.643 v), H = exp(80.4945 − 400.468 v).
    /// The constants are from memory; the same were seen in public code, not in the standard. They agree with the simplified form within 0.5 % in Z.
    /// </summary>
    General,
}
