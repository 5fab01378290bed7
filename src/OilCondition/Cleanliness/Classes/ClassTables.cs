namespace OilCondition.Cleanliness;

/// <summary>The limits of the classes, most particles per 100 mL.</summary>
internal static class ClassTables
{
    /// <summary>AS4059 table 2, classes 000 to 12 at sizes A to F, whole numbers.</summary>
    public static ClassLimits CumulativeExact { get; } =
        new(
            CleanlinessClass.LowestRank,
            [195, 390, 780, 1560, 3120, 6250, 12500, 25000, 50000, 100000, 200000, 400000, 800000, 1600000, 3200000],
            [76, 152, 304, 609, 1217, 2432, 4864, 9731, 19462, 38924, 77849, 155698, 311396, 622792, 1245584],
            [14, 27, 54, 109, 217, 432, 864, 1731, 3462, 6924, 13849, 27698, 55396, 110792, 221584],
            [3, 5, 10, 20, 39, 76, 152, 306, 612, 1224, 2449, 4898, 9796, 19592, 39184],
            [1, 1, 2, 4, 7, 13, 26, 53, 106, 212, 424, 848, 1696, 3392, 6784],
            [0, 0, 0, 1, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 1024]
        );

    /// <summary>The same table as printed with three figures.</summary>
    public static ClassLimits CumulativeRounded { get; } =
        new(
            CleanlinessClass.LowestRank,
            [195, 390, 780, 1560, 3120, 6250, 12500, 25000, 50000, 100000, 200000, 400000, 800000, 1600000, 3200000],
            [76, 152, 304, 609, 1220, 2430, 4860, 9730, 19500, 38900, 77900, 156000, 311000, 623000, 1250000],
            [14, 27, 54, 109, 217, 432, 864, 1730, 3460, 6920, 13900, 27700, 55400, 111000, 222000],
            [3, 5, 10, 20, 39, 76, 152, 306, 612, 1220, 2450, 4900, 9800, 19600, 39200],
            [1, 1, 2, 4, 7, 13, 26, 53, 106, 212, 424, 848, 1700, 3390, 6780],
            [0, 0, 0, 1, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 1020]
        );

    /// <summary>NAS 1638 and AS4059 table 1, classes 00 to 12 in the five ranges.</summary>
    public static ClassLimits Differential { get; } =
        new(
            -1,
            [125, 250, 500, 1000, 2000, 4000, 8000, 16000, 32000, 64000, 128000, 256000, 512000, 1024000],
            [22, 44, 89, 178, 356, 712, 1425, 2850, 5700, 11400, 22800, 45600, 91200, 182400],
            [4, 8, 16, 32, 63, 126, 253, 506, 1012, 2025, 4050, 8100, 16200, 32400],
            [1, 2, 3, 6, 11, 22, 45, 90, 180, 360, 720, 1440, 2880, 5760],
            [0, 0, 1, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 1024]
        );

    /// <summary>US Navy, classes 0 to 6 in 5-10, 10-25, 25-50, 50-100, above 100 µm.</summary>
    public static ClassLimits Navy { get; } =
        new(
            0,
            [2700, 4600, 9700, 24000, 32000, 87000, 128000],
            [670, 1340, 2680, 5360, 10700, 21400, 42000],
            [93, 210, 380, 780, 1510, 3130, 6500],
            [16, 28, 56, 110, 225, 430, 1000],
            [1, 3, 5, 11, 21, 41, 92]
        );

    public static ClassLimits Cumulative(As4059Printing printing) =>
        printing == As4059Printing.Rounded ? CumulativeRounded : CumulativeExact;
}
