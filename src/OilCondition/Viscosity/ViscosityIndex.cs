using System.Globalization;
using MathNet.Numerics.RootFinding;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>Viscosity index of an oil from its kinematic viscosities at 40 °C and 100 °C, after ASTM D2270 (ISO 2909).</summary>
/// <remarks>
/// Procedure A (U at or above H): VI = 100 (L − U)/(L − H). Procedure B (U below H): VI = 100 + (10^N − 1)/0.00715, N = (log H − log U)/log Y.
/// U: viscosity at 40 °C [mm²/s];  Y: viscosity at 100 °C [mm²/s];  L, H: basic values of table 1 at Y [mm²/s], by straight line between its rows;
/// above 70 mm²/s L = 0.8353 Y² + 14.67 Y − 216, H = 0.1684 Y² + 11.85 Y − 97 (at 70 they lie 0.02 % below the table).
/// Below Y = 2 mm²/s the index is not defined and is refused. An index below 0 is legitimate. No limits of U are given by the practice;
/// here it must lie above Y and not above 2e7 mm²/s.
/// </remarks>
/// <example>
/// <code>
/// var index = ViscosityIndex.FromViscosities(KinematicViscosity.FromCentistokes(73.3), KinematicViscosity.FromCentistokes(8.86));
/// // index.Reported is 92
/// </code>
/// </example>
public sealed record ViscosityIndex
{
    private ViscosityIndex(double u, double y)
    {
        var (l, h) = ViscosityIndexTable.At(y);
        L = KinematicViscosity.FromCentistokes(l);
        H = KinematicViscosity.FromCentistokes(h);
        IsProcedureB = u < h;
        Unrounded = Value(u, y);
    }

    /// <summary>The index as computed.</summary>
    public double Unrounded { get; }

    /// <summary>The index as a laboratory reports it: a whole number, see <see cref="Round"/>.</summary>
    public int Reported => Round(Unrounded);

    /// <summary>
    /// Whether procedure B gave the index: the oil at 40 °C is thinner than <see cref="H"/>, and the index is above 100. If not, procedure A did.
    /// </summary>
    public bool IsProcedureB { get; }

    /// <summary>Viscosity at 40 °C of the reference oil of index 0 that equals this oil at 100 °C.</summary>
    public KinematicViscosity L { get; }

    /// <summary>Viscosity at 40 °C of the reference oil of index 100 that equals this oil at 100 °C.</summary>
    public KinematicViscosity H { get; }

    /// <summary>Where table and procedures come from.</summary>
    public static Source Source { get; } =
        new(SourceKind.Standard, "ASTM D2270 (ISO 2909) as seen in reproduction", "table 1, procedures A and B");

    /// <summary>The viscosity index of an oil.</summary>
    /// <param name="viscosityAt40">Kinematic viscosity at 40 °C, above that at 100 °C, at most 2e7 mm²/s.</param>
    /// <param name="viscosityAt100">Kinematic viscosity at 100 °C, 2 mm²/s and above.</param>
    /// <returns>The index with what it was computed from.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A viscosity lies outside its range; below 2 mm²/s at 100 °C the index is not defined.</exception>
    /// <exception cref="ArgumentException">The viscosity at 40 °C is not above that at 100 °C.</exception>
    public static ViscosityIndex FromViscosities(KinematicViscosity viscosityAt40, KinematicViscosity viscosityAt100)
    {
        var y = Guard.InRange(
            viscosityAt100.Centistokes,
            ViscosityIndexTable.LowestY,
            PhysicalRange.HighestCentistokes,
            "mm²/s",
            nameof(viscosityAt100)
        );
        var u = Guard.InRange(
            viscosityAt40.Centistokes,
            ViscosityIndexTable.LowestY,
            PhysicalRange.HighestCentistokes,
            "mm²/s",
            nameof(viscosityAt40)
        );
        return u > y
            ? new ViscosityIndex(u, y)
            : throw new ArgumentException(
                FormattableString.Invariant(
                    $"viscosityAt40 is {u:G7} mm²/s, viscosityAt100 is {y:G7} mm²/s; allowed: viscosityAt40 above viscosityAt100."
                ),
                nameof(viscosityAt40)
            );
    }

    /// <summary>The viscosity at 100 °C that an oil of a given viscosity at 40 °C and viscosity index has: the way back from a data sheet.</summary>
    /// <param name="viscosityAt40">Kinematic viscosity at 40 °C, 5 to 10000 mm²/s.</param>
    /// <param name="viscosityIndex">Viscosity index, 0 to 400.</param>
    /// <returns>Kinematic viscosity at 100 °C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A value lies outside its range, or an oil so thin at 40 °C reaches this index only below 2 mm²/s at 100 °C, where none is defined.
    /// </exception>
    public static KinematicViscosity ViscosityAt100(KinematicViscosity viscosityAt40, double viscosityIndex)
    {
        var u = Guard.InRange(viscosityAt40.Centistokes, 5, 10_000, "mm²/s", nameof(viscosityAt40));
        var lowest = Value(u, ViscosityIndexTable.LowestY);
        Guard.InRange(viscosityIndex, Math.Max(0, lowest), 400, "");
        return KinematicViscosity.FromCentistokes(
            Brent.FindRoot(y => Value(u, y) - viscosityIndex, ViscosityIndexTable.LowestY, u, 1e-9)
        );
    }

    /// <summary>Rounds an index to a whole number, exact halves to the even one (ASTM E29; recalled): 116.5 gives 116.</summary>
    /// <param name="viscosityIndex">Viscosity index, −2e9 to 2e9.</param>
    /// <returns>The whole number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The index lies outside its range.</exception>
    public static int Round(double viscosityIndex)
    {
        Guard.InRange(viscosityIndex, -2e9, 2e9, "");
        // A half that binary fractions miss by a hair is still a half.
        return (int)Math.Round(Math.Round(viscosityIndex, 6), MidpointRounding.ToEven);
    }

    /// <summary>The index as a laboratory reports it.</summary>
    /// <returns>For example <c>92</c>.</returns>
    public override string ToString() => Reported.ToString(CultureInfo.InvariantCulture);

    private static double Value(double u, double y)
    {
        var (l, h) = ViscosityIndexTable.At(y);
        return u >= h ? 100 * (l - u) / (l - h) : 100 + (Math.Pow(10, Math.Log(h / u) / Math.Log(y)) - 1) / 0.00715;
    }
}
