namespace DeskCalculations;

/// <summary>All topics on one sheet.</summary>
public static class Desk
{
    /// <summary>The sheet, at most 100 columns wide.</summary>
    public static string Sheet()
    {
        var sheet = new Sheet("Harrow Point is INVENTED, and so is every figure of its oil and machines below.");
        WaterInOil.Write(sheet);
        AirAndVacuum.Write(sheet);
        Heat.Write(sheet);
        Thickness.Write(sheet);
        Particles.Write(sheet);
        Equipment.Write(sheet);
        return sheet.ToString();
    }
}
