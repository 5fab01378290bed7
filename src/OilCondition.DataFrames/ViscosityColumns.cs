using Microsoft.Data.Analysis;
using OilCondition.Text;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.DataFrames;

/// <summary>Viscosity index, and viscosity at another temperature, by the column.</summary>
/// <remarks>
/// The formulas are those of <see cref="ViscosityIndex"/> and <see cref="ViscosityTemperatureLine"/>. Null gives null; what the standards do not define, or what lies
/// outside the two measured temperatures, gives null and a reason.
/// </remarks>
/// <example>
/// <code>
/// var index = ViscosityColumns.Index(wide.ValuesOf(Measurands.Viscosity40), wide.ValuesOf(Measurands.Viscosity100));
/// </code>
/// </example>
public static class ViscosityColumns
{
    private const string NotFalling = "the viscosity at 40 °C is not above that at 100 °C";

    /// <summary>Viscosity index after ASTM D2270: <c>viscosity index</c>, a whole number as reported, and <c>indexReason</c>.</summary>
    /// <param name="viscositiesAt40">Kinematic viscosities at 40 °C in mm²/s, 2 to 2e7 and above those at 100 °C.</param>
    /// <param name="viscositiesAt100">Kinematic viscosities at 100 °C in mm²/s, 2 to 2e7; below 2 no index is defined. Same length.</param>
    /// <returns>A frame of the same length.</returns>
    /// <exception cref="ArgumentException">The columns differ in length or hold no numbers: all faults are named.</exception>
    public static DataFrame Index(DataFrameColumn viscositiesAt40, DataFrameColumn viscositiesAt100)
    {
        const double LowestWithIndex = 2;
        var rows = ColumnRows.Of(
            At40(viscositiesAt40) with
            {
                Lowest = LowestWithIndex,
            },
            At100(viscositiesAt100) with
            {
                Lowest = LowestWithIndex,
            }
        );
        var indexes = new int[rows.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            var (at40, at100) = (rows.Values(0)[i], rows.Values(1)[i]);
            if (at40 > at100)
            {
                indexes[i] = ViscosityIndex
                    .FromViscosities(
                        KinematicViscosity.FromCentistokes(at40),
                        KinematicViscosity.FromCentistokes(at100)
                    )
                    .Reported;
            }
            else
            {
                rows.Drop(i, NotFalling);
            }
        }

        return new DataFrame(rows.Wholes("viscosity index", indexes), rows.Reasons("indexReason"));
    }

    /// <summary>Viscosity at other temperatures by the line of ASTM D341 through both measured ones: <c>viscosity [mm²/s]</c>, <c>viscosityReason</c>.</summary>
    /// <param name="viscositiesAt40">Kinematic viscosities at 40 °C in mm²/s, 0.21 to 2e7 and above those at 100 °C.</param>
    /// <param name="viscositiesAt100">Kinematic viscosities at 100 °C in mm²/s, 0.21 to 2e7; same length.</param>
    /// <param name="temperatures">Oil temperatures in °C, −60 to 200; same length.</param>
    /// <param name="extrapolate">Whether temperatures below 40 and above 100 °C have values too, with a reason that says so. Cold oils depart from the line.</param>
    /// <returns>A frame of the same length.</returns>
    /// <exception cref="ArgumentException">The columns differ in length or hold no numbers: all faults are named.</exception>
    public static DataFrame At(
        DataFrameColumn viscositiesAt40,
        DataFrameColumn viscositiesAt100,
        DataFrameColumn temperatures,
        bool extrapolate = false
    )
    {
        var rows = ColumnRows.Of(
            At40(viscositiesAt40),
            At100(viscositiesAt100),
            WaterColumns.Temperature(temperatures)
        );
        var viscosities = rows.NewColumn();
        for (var i = 0; i < rows.Length; i++)
        {
            viscosities[i] = At(rows, i, extrapolate);
        }

        return new DataFrame(rows.Numbers("viscosity [mm²/s]", viscosities), rows.Reasons("viscosityReason"));
    }

    private static double At(ColumnRows rows, int index, bool extrapolate)
    {
        var (at40, at100, celsius) = (rows.Values(0)[index], rows.Values(1)[index], rows.Values(2)[index]);
        if (!(at40 > at100))
        {
            rows.Drop(index, NotFalling);
            return 0;
        }

        var point = ViscosityTemperatureLine
            .FromTwoPoints(
                Temperature.FromDegreesCelsius(40),
                KinematicViscosity.FromCentistokes(at40),
                Temperature.FromDegreesCelsius(100),
                KinematicViscosity.FromCentistokes(at100)
            )
            .ViscosityAt(Temperature.FromDegreesCelsius(celsius));
        if (point.IsThicker || point.IsThinner)
        {
            rows.Drop(index, $"{(point.IsThicker ? "thicker" : "thinner")} than the scale of ASTM D341");
        }
        else if (point.IsExtrapolated)
        {
            var reason = FormattableString.Invariant($"{celsius:G4} °C is outside the measured 40 to 100 °C");
            rows.Outside(index, reason, extrapolate);
        }

        return point.Viscosity.Centistokes;
    }

    private static ColumnInput At40(DataFrameColumn column) => Viscosity(column, Measurands.Viscosity40);

    private static ColumnInput At100(DataFrameColumn column) => Viscosity(column, Measurands.Viscosity100);

    private static ColumnInput Viscosity(DataFrameColumn column, Measurand measurand) =>
        new(column, measurand.Name, measurand.Unit, PhysicalRange.LowestCentistokes, PhysicalRange.HighestCentistokes);
}
