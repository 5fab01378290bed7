using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The size of a drop that may be out.</summary>
internal static class Droplet
{
    public static Length Shifted(Length diameter, InputShift shift) =>
        Length.FromMicrometers(Math.Min(5000, Math.Max(0.01, diameter.Micrometers * shift.DropletDiameter)));
}
