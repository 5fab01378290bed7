using UnitsNet;

namespace OilCondition.Water;

/// <summary>What one measurement does to a fitted saturation curve, found by leaving it out.</summary>
/// <remarks>
/// h = w (1/Σw + (x − x̄)²/Sxx) is the leverage; the residual without the measurement is r / (1 − h). Where a measurement alone
/// supports the slope (h = 1) the curve without it does not exist: <see cref="IsSoleSupport"/> is true and the figures
/// "without" repeat those of the whole fit.
/// </remarks>
public sealed record SaturationInfluence
{
    internal SaturationInfluence(
        SaturationMeasurement measurement,
        double leverage,
        double measuredOverCurve,
        bool isSoleSupport,
        double aWithout,
        double bKelvinWithout,
        MassFraction saturationWithout
    )
    {
        Measurement = measurement;
        Leverage = leverage;
        MeasuredOverCurve = Ratio.FromDecimalFractions(measuredOverCurve);
        IsSoleSupport = isSoleSupport;
        AWithout = aWithout;
        BKelvinWithout = bKelvinWithout;
        SaturationWithout = saturationWithout;
    }

    /// <summary>The measurement.</summary>
    public SaturationMeasurement Measurement { get; }

    /// <summary>Leverage h, 0 to 1; the mean is 2/n, and above 4/n a measurement pulls hard.</summary>
    public double Leverage { get; }

    /// <summary>Measured saturation over that of the curve fitted to all.</summary>
    public Ratio MeasuredOverCurve { get; }

    /// <summary>Whether no curve can be fitted without this measurement.</summary>
    public bool IsSoleSupport { get; }

    /// <summary>Constant A fitted to the others.</summary>
    public double AWithout { get; }

    /// <summary>Constant B fitted to the others, in kelvin. It may be negative: then this measurement alone makes the curve rise.</summary>
    public double BKelvinWithout { get; }

    /// <summary>Saturation that the others predict at this measurement's temperature.</summary>
    public MassFraction SaturationWithout { get; }
}
