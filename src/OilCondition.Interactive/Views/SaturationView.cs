using OilCondition.Charts;
using OilCondition.Statistics;
using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Interactive.Views;

/// <summary>A fitted saturation curve: its constants with their errors, and each measurement beside the curve.</summary>
internal static class SaturationView
{
    private const double Confidence = 0.9;

    public static View Of(SaturationFit fit) =>
        new View()
            .Heading($"Saturation curve: {fit.Curve.Name}")
            .Line("log10 S = A − B / T, with S in mg/kg and T in K.")
            .Figures(
                ("A", $"{PlainText.Reported(fit.Curve.A)}, standard error {PlainText.Number(fit.AStandardError)}"),
                (
                    "B, K",
                    $"{PlainText.Reported(fit.Curve.BKelvin)}, standard error {PlainText.Number(fit.BStandardErrorKelvin)}"
                ),
                Scatter(fit),
                ("degrees of freedom", PlainText.Number(fit.DegreesOfFreedom)),
                (
                    "measured between, °C",
                    $"{PlainText.Reported(fit.Curve.Lowest.DegreesCelsius)} and {PlainText.Reported(fit.Curve.Highest.DegreesCelsius)}; outside the curve is extrapolated"
                ),
                ("source", fit.Curve.Source.ToString())
            )
            .Table(
                [
                    "temperature, °C",
                    "measured, mg/kg",
                    "curve, mg/kg",
                    $"band of the curve, {100 * Confidence:0} %",
                    "measured over curve",
                ],
                fit.Measurements.OrderBy(one => one.Temperature.DegreesCelsius).Select(one => Row(fit, one))
            )
            .Picture(SaturationChart.Of(fit, confidence: Confidence));

    /// <summary>From decades to shares: ln 10. Beside stated errors the scatter is a share of them.</summary>
    private static (string Name, string Figure) Scatter(SaturationFit fit)
    {
        var scatter = Math.Log(10) * fit.ResidualStandardDeviation;
        return fit.Measurements.All(one => one.HasStandardError)
            ? ("scatter over the stated errors, 1 where they are right", PlainText.Number(scatter))
            : ("scatter of a measurement, % of the saturation", PlainText.Number(100 * scatter));
    }

    private static string[] Row(SaturationFit fit, SaturationMeasurement measurement)
    {
        var band = fit.BandAt(measurement.Temperature, Confidence, BandKind.Mean);
        return
        [
            PlainText.Reported(measurement.Temperature.DegreesCelsius),
            Content(measurement.Saturation),
            Content(band.Estimate.Content),
            $"{Content(band.Lower.Content)} to {Content(band.Upper.Content)}",
            PlainText.Number(fit.MeasuredOverCurve(measurement).DecimalFractions),
        ];
    }

    private static string Content(MassFraction content) => PlainText.Number(content.PartsPerMillion);
}
