using OilCondition.Text;
#if NET
using System.Numerics;
#endif

namespace OilCondition.Water;

/// <content>The same answers for whole columns: spans in, spans out, nothing allocated.</content>
public sealed partial class SaturationCurve
{
    private static readonly double Ln10 = Math.Log(10);

    /// <summary>Dissolved water at saturation, for a column of temperatures.</summary>
    /// <remarks>Vectorised on .NET; within a few units in the last place of <see cref="SaturationAt"/>.</remarks>
    /// <param name="temperaturesCelsius">Oil temperatures in °C, −60 to 200.</param>
    /// <param name="saturationsMgPerKg">Receives the saturations in mg/kg; same length.</param>
    /// <returns>How many of them are extrapolated.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A temperature lies outside its range or is not a number; the message names the row.</exception>
    public int Saturations(ReadOnlySpan<double> temperaturesCelsius, Span<double> saturationsMgPerKg)
    {
        Guard.SameLength(
            saturationsMgPerKg.Length,
            temperaturesCelsius.Length,
            nameof(saturationsMgPerKg),
            nameof(temperaturesCelsius)
        );
        var extrapolated = CheckTemperatures(temperaturesCelsius);
        var i = 0;
#if NET
        var exponent = new Vector<double>(A * Ln10);
        var slope = new Vector<double>(BKelvin * Ln10);
        var zero = new Vector<double>(273.15);
        var most = new Vector<double>(PhysicalRange.PureWaterMgPerKg);
        for (; i <= temperaturesCelsius.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            var kelvins = new Vector<double>(temperaturesCelsius[i..]) + zero;
            Vector.Min(most, Vector.Exp(exponent - slope / kelvins)).CopyTo(saturationsMgPerKg[i..]);
        }
#endif
        for (; i < temperaturesCelsius.Length; i++)
        {
            saturationsMgPerKg[i] = Math.Min(
                PhysicalRange.PureWaterMgPerKg,
                Math.Exp(Ln10 * (A - BKelvin / (temperaturesCelsius[i] + 273.15)))
            );
        }

        return extrapolated;
    }

    /// <summary>Splits a column of totals into dissolved and free.</summary>
    /// <param name="totalsMgPerKg">All water, in mg/kg, 0 to 500 000.</param>
    /// <param name="temperaturesCelsius">Oil temperatures in °C, −60 to 200; same length.</param>
    /// <param name="dissolvedMgPerKg">Receives dissolved water in mg/kg; same length. Must not overlap the totals.</param>
    /// <param name="freeMgPerKg">Receives free water in mg/kg; same length. Must not overlap the totals.</param>
    /// <returns>How many rows are extrapolated.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range or is not a number; the message names the row.</exception>
    public int Split(
        ReadOnlySpan<double> totalsMgPerKg,
        ReadOnlySpan<double> temperaturesCelsius,
        Span<double> dissolvedMgPerKg,
        Span<double> freeMgPerKg
    )
    {
        Guard.SameLength(
            totalsMgPerKg.Length,
            temperaturesCelsius.Length,
            nameof(totalsMgPerKg),
            nameof(temperaturesCelsius)
        );
        Guard.SameLength(freeMgPerKg.Length, totalsMgPerKg.Length, nameof(freeMgPerKg), nameof(totalsMgPerKg));
        CheckContents(totalsMgPerKg, nameof(totalsMgPerKg));
        var extrapolated = Saturations(temperaturesCelsius, dissolvedMgPerKg);
        for (var i = 0; i < totalsMgPerKg.Length; i++)
        {
            freeMgPerKg[i] = Math.Max(0, totalsMgPerKg[i] - dissolvedMgPerKg[i]);
            dissolvedMgPerKg[i] = Math.Min(totalsMgPerKg[i], dissolvedMgPerKg[i]);
        }

        return extrapolated;
    }

    /// <summary>Relative saturation for a column of totals: what a sensor would read.</summary>
    /// <param name="totalsMgPerKg">All water, in mg/kg, 0 to 500 000.</param>
    /// <param name="temperaturesCelsius">Oil temperatures in °C, −60 to 200; same length.</param>
    /// <param name="relativeSaturations">Receives the relative saturations, 0 to 1; same length. Must not overlap the totals.</param>
    /// <returns>How many rows are extrapolated.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range or is not a number; the message names the row.</exception>
    public int RelativeSaturations(
        ReadOnlySpan<double> totalsMgPerKg,
        ReadOnlySpan<double> temperaturesCelsius,
        Span<double> relativeSaturations
    )
    {
        Guard.SameLength(
            totalsMgPerKg.Length,
            temperaturesCelsius.Length,
            nameof(totalsMgPerKg),
            nameof(temperaturesCelsius)
        );
        CheckContents(totalsMgPerKg, nameof(totalsMgPerKg));
        var extrapolated = Saturations(temperaturesCelsius, relativeSaturations);
        for (var i = 0; i < totalsMgPerKg.Length; i++)
        {
            relativeSaturations[i] = Math.Min(1, totalsMgPerKg[i] / relativeSaturations[i]);
        }

        return extrapolated;
    }

    /// <summary>Dissolved water for a column of sensor readings. At a reading of 1 it is the least that the oil can hold in all.</summary>
    /// <param name="relativeSaturations">Sensor readings, 0 to 1, with a rounding grace of 0.005 at both ends.</param>
    /// <param name="temperaturesCelsius">Oil temperatures at the sensor in °C, −60 to 200; same length.</param>
    /// <param name="dissolvedMgPerKg">Receives dissolved water in mg/kg; same length. Must not overlap the readings.</param>
    /// <returns>How many rows are extrapolated.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range or is not a number; the message names the row.</exception>
    public int Dissolved(
        ReadOnlySpan<double> relativeSaturations,
        ReadOnlySpan<double> temperaturesCelsius,
        Span<double> dissolvedMgPerKg
    )
    {
        Guard.SameLength(
            relativeSaturations.Length,
            temperaturesCelsius.Length,
            nameof(relativeSaturations),
            nameof(temperaturesCelsius)
        );
        for (var i = 0; i < relativeSaturations.Length; i++)
        {
            if (
                !(
                    relativeSaturations[i] >= -PhysicalRange.RelativeSaturationGrace
                    && relativeSaturations[i] <= 1 + PhysicalRange.RelativeSaturationGrace
                )
            )
            {
                PhysicalRange.Saturation(relativeSaturations[i], $"{nameof(relativeSaturations)}[{i}]");
            }
        }

        var extrapolated = Saturations(temperaturesCelsius, dissolvedMgPerKg);
        for (var i = 0; i < relativeSaturations.Length; i++)
        {
            dissolvedMgPerKg[i] *= Math.Min(1, Math.Max(0, relativeSaturations[i]));
        }

        return extrapolated;
    }

    /// <summary>The temperature at which each of a column of contents just saturates the oil, kept within −60 to 200 °C.</summary>
    /// <param name="contentsMgPerKg">Water contents in mg/kg, 0 to 500 000.</param>
    /// <param name="temperaturesCelsius">
    /// Receives the separation temperatures in °C; same length. −60 means that the water stays dissolved down to there at least,
    /// 200 that it is free up to there at least.
    /// </param>
    /// <returns>How many of them lie outside the range in which the curve was measured or published.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A content lies outside its range or is not a number; the message names the row.</exception>
    public int SeparationTemperatures(ReadOnlySpan<double> contentsMgPerKg, Span<double> temperaturesCelsius)
    {
        Guard.SameLength(
            temperaturesCelsius.Length,
            contentsMgPerKg.Length,
            nameof(temperaturesCelsius),
            nameof(contentsMgPerKg)
        );
        CheckContents(contentsMgPerKg, nameof(contentsMgPerKg));
        var (lowest, highest) = CoveredCelsius();
        var extrapolated = 0;
        for (var i = 0; i < contentsMgPerKg.Length; i++)
        {
            // A content of 0 gives log10 = −∞ and 0 K, which the range turns into −60 °C.
            var denominator = A - Math.Log10(contentsMgPerKg[i]);
            var celsius = denominator > 0 ? BKelvin / denominator - 273.15 : OilTemperature.HighestCelsius;
            celsius = Math.Min(OilTemperature.HighestCelsius, Math.Max(OilTemperature.LowestCelsius, celsius));
            temperaturesCelsius[i] = celsius;
            extrapolated += celsius >= lowest && celsius <= highest ? 0 : 1;
        }

        return extrapolated;
    }

    private (double Lowest, double Highest) CoveredCelsius() =>
        (Lowest.Kelvins - 273.15 - 1e-9, Highest.Kelvins - 273.15 + 1e-9);

    private int CheckTemperatures(ReadOnlySpan<double> temperaturesCelsius)
    {
        var (lowest, highest) = CoveredCelsius();
        var extrapolated = 0;
        for (var i = 0; i < temperaturesCelsius.Length; i++)
        {
            var celsius = temperaturesCelsius[i];
            if (!(celsius >= OilTemperature.LowestCelsius && celsius <= OilTemperature.HighestCelsius))
            {
                Guard.InRange(
                    celsius,
                    OilTemperature.LowestCelsius,
                    OilTemperature.HighestCelsius,
                    "°C",
                    $"{nameof(temperaturesCelsius)}[{i}]"
                );
            }

            extrapolated += celsius >= lowest && celsius <= highest ? 0 : 1;
        }

        return extrapolated;
    }

    private static void CheckContents(ReadOnlySpan<double> contents, string name)
    {
        for (var i = 0; i < contents.Length; i++)
        {
            if (!(contents[i] >= 0 && contents[i] <= PhysicalRange.HighestWaterMgPerKg))
            {
                Guard.InRange(contents[i], 0, PhysicalRange.HighestWaterMgPerKg, "mg/kg", $"{name}[{i}]");
            }
        }
    }
}
