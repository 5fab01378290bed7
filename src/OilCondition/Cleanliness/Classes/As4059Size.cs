namespace OilCondition.Cleanliness;

/// <summary>The sizes of AS4059, each 'and above': µm(c) by a counter calibrated after ISO 11171; µm by microscope or an older calibration.</summary>
public enum As4059Size
{
    /// <summary>4 µm(c); 1 µm.</summary>
    A,

    /// <summary>6 µm(c); 5 µm.</summary>
    B,

    /// <summary>14 µm(c); 15 µm.</summary>
    C,

    /// <summary>21 µm(c); 25 µm.</summary>
    D,

    /// <summary>38 µm(c); 50 µm.</summary>
    E,

    /// <summary>70 µm(c); 100 µm.</summary>
    F,
}
