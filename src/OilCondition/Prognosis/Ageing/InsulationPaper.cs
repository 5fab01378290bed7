namespace OilCondition.Prognosis;

/// <summary>Which paper and which law of its ageing.</summary>
internal enum InsulationPaper
{
    /// <summary>Thermally upgraded paper, 65 °C average winding rise: exp(15000/383 − 15000/(T + 273)), 1 at 110 °C. IEEE Std C57.91, clause 5.</summary>
    Upgraded65Rise,

    /// <summary>Paper of transformers with 55 °C average winding rise: exp(15000/368 − 15000/(T + 273)), 1 at 95 °C. IEEE Std C57.91-1995.</summary>
    Kraft55Rise,

    /// <summary>Paper that is not upgraded, 2^((T − 98)/6), 1 at 98 °C. IEC 60076-7, from memory, not seen.</summary>
    KraftSixDegreeRule,
}
