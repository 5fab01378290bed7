using OilCondition.Charts.Drawing;
using OilCondition.Statistics;
using OilCondition.Water;
using ScottPlot;
using UnitsNet;

namespace OilCondition.Charts.Pictures;

/// <summary>A saturation curve, drawn.</summary>
internal sealed class SaturationPicture(
    Page page,
    string title,
    SaturationCurve curve,
    SaturationFit? fit,
    Temperature running,
    Temperature standstill,
    MassFraction? water,
    double confidence,
    bool isOfMachine = true
)
{
    private const int Parts = 80;

    private readonly ChartTexts texts = page.Texts;
    private readonly Shown celsius = Shown.Of("°C", page.Units);

    public Scene Scene()
    {
        double[] marks =
        [
            running.DegreesCelsius,
            standstill.DegreesCelsius,
            .. fit?.Measurements.Select(one => one.Temperature.DegreesCelsius) ?? [],
        ];
        var (low, high) = (Math.Max(-60, marks.Min() - 5), Math.Min(200, marks.Max() + 10));
        double[] temperatures =
        [
            .. Enumerable
                .Range(0, Parts + 1)
                .Select(i => low + (high - low) * i / Parts)
                .Concat(new[] { curve.Lowest.DegreesCelsius, curve.Highest.DegreesCelsius })
                .Where(at => at >= low && at <= high)
                .Distinct()
                .OrderBy(at => at),
        ];
        List<Layer> layers = [.. Band(temperatures), .. Separated(), .. Curves(temperatures), .. Points()];
        var x = NumberAxis.Around(
            $"{texts.Say("oil temperature")}, {celsius.Unit}",
            [celsius.From(low), celsius.From(high)],
            false,
            texts
        );
        var y = NumberAxis.Around(
            $"{texts.Say("water")}, mg/kg",
            layers.SelectMany(Heights).Append(0),
            false,
            texts,
            isFromZero: true
        );
        return new Scene(title, Lines(), x, y)
        {
            Layers = layers,
            Levels = water is { } all
                ? [new LevelMark(all.PartsPerMillion, texts.Say("all water {0}", Ppm(all)), Ink.Blue, Dash.Long)]
                : [],
            Moments = isOfMachine ? [.. Moments()] : [],
        };
    }

    private IEnumerable<Moment> Moments() =>
        [
            new Moment(
                celsius.From(running.DegreesCelsius),
                texts.Say("running {0}", Degrees(running)),
                Ink.Vermilion,
                Dash.Long
            ),
            new Moment(
                celsius.From(standstill.DegreesCelsius),
                texts.Say("standstill {0}", Degrees(standstill)),
                Ink.Blue,
                Dash.Short
            ),
        ];

    private static IEnumerable<double> Heights(Layer layer) =>
        layer switch
        {
            Marks marks => marks.Spots.Select(spot => spot.Y),
            Trace course => course.Spots.Select(spot => spot.Y),
            Shade area => area.Outline.Select(spot => spot.Y),
            _ => [],
        };

    private double Held(double degrees) => At(degrees).PartsPerMillion;

    private MassFraction At(double degrees) => curve.SaturationAt(Temperature.FromDegreesCelsius(degrees)).Content;

    private Spot Spot(double degrees, double ppm) => new(celsius.From(degrees), ppm);

    private IEnumerable<Layer> Curves(double[] temperatures)
    {
        Trace Part(string? key, Dash dash, Func<double, bool> which) =>
            new(key, Ink.Black, dash, [.. temperatures.Where(which).Select(at => Spot(at, Held(at)))], 2.2f);
        var (lowest, highest) = (curve.Lowest.DegreesCelsius, curve.Highest.DegreesCelsius);
        yield return Part(
            texts.Say("saturation: all that the oil holds dissolved"),
            Dash.Solid,
            at => at >= lowest && at <= highest
        );
        var (below, above) = (temperatures[0] < lowest, temperatures[temperatures.Length - 1] > highest);
        if (below)
        {
            yield return Part(texts.Say("extrapolated"), Dash.Dots, at => at <= lowest);
        }

        if (above)
        {
            yield return Part(below ? null : texts.Say("extrapolated"), Dash.Dots, at => at >= highest);
        }
    }

    private IEnumerable<Layer> Band(double[] temperatures)
    {
        if (fit is null)
        {
            yield break;
        }

        var bands = temperatures
            .Select(at => (at, Band: fit.BandAt(Temperature.FromDegreesCelsius(at), confidence, BandKind.Mean)))
            .ToList();
        yield return new Shade(
            texts.Say("band of the curve, {0} %", texts.Number(100 * confidence)),
            Ink.PaleGrey,
            [
                .. bands.Select(one => Spot(one.at, one.Band.Upper.Content.PartsPerMillion)),
                .. Enumerable.Reverse(bands).Select(one => Spot(one.at, one.Band.Lower.Content.PartsPerMillion)),
            ]
        );
    }

    /// <summary>Between all water and the curve, from where it separates to standstill.</summary>
    private IEnumerable<Layer> Separated()
    {
        if (Cooled() is not { } cooled || !(cooled.Separated.PartsPerMillion > 0) || water is not { } all)
        {
            yield break;
        }

        var total = all.PartsPerMillion;
        var (cold, warm) = (standstill.DegreesCelsius, running.DegreesCelsius);
        var places = Enumerable
            .Range(0, Parts + 1)
            .Select(i => cold + (warm - cold) * i / Parts)
            .Where(at => Held(at) <= total)
            .ToList();
        yield return new Shade(
            texts.Say("drops out on cooling: {0}", Ppm(cooled.Separated)),
            Ink.PaleBlue,
            [
                .. places.Select(at => Spot(at, Held(at))),
                Spot(places[places.Count - 1], Math.Min(total, Math.Max(Held(places[places.Count - 1]), Held(warm)))),
                .. Enumerable.Reverse(places).Select(at => Spot(at, Math.Min(total, Held(warm)))),
            ]
        );
    }

    private IEnumerable<Layer> Points()
    {
        if (fit is not null)
        {
            yield return new Marks(
                texts.Say("measured saturation"),
                Ink.Black,
                MarkerShape.FilledDiamond,
                [
                    .. fit.Measurements.Select(one =>
                        Spot(one.Temperature.DegreesCelsius, one.Saturation.PartsPerMillion)
                    ),
                ],
                9
            );
        }

        if (water is { } all)
        {
            yield return new Marks(
                texts.Say("water dissolved, running and at standstill"),
                Ink.Blue,
                MarkerShape.FilledCircle,
                [
                    .. new[] { running, standstill }
                        .Distinct()
                        .Select(at => Spot(at.DegreesCelsius, Math.Min(all.PartsPerMillion, Held(at.DegreesCelsius)))),
                ],
                9
            );
        }
    }

    private CoolDown? Cooled() =>
        water is { } all && running >= standstill ? curve.Cool(all, running, standstill) : null;

    private List<string> Lines()
    {
        if (!isOfMachine)
        {
            return
            [
                texts.Say(
                    "Measured from {0} to {1}: the oil holds {2} and {3} there.",
                    Degrees(standstill),
                    Degrees(running),
                    Held(standstill),
                    Held(running)
                ),
            ];
        }

        var lines = new List<string>
        {
            texts.Say(
                "The oil holds {0} at {1} running and {2} at {3} standstill.",
                Held(running),
                Degrees(running),
                Held(standstill),
                Degrees(standstill)
            ),
        };
        if (water is { } all)
        {
            lines.AddRange(Of(all));
        }
        else
        {
            lines.Add(texts.Say("Its water content is not known."));
        }

        if (!curve.Covers(running) || !curve.Covers(standstill))
        {
            lines.Add(texts.Say("The curve is extrapolated there."));
        }

        return lines;
    }

    private IEnumerable<string> Of(MassFraction all)
    {
        var free = curve.Split(all, running).Free;
        if (free.PartsPerMillion > 0)
        {
            yield return texts.Say("Of {0} of water {1} is free already when it runs.", Ppm(all), Ppm(free));
        }

        if (Cooled() is { } cooled)
        {
            yield return cooled.Separated.PartsPerMillion > 0
                ? texts.Say("With {0} of water, {1} drops out on cooling.", Ppm(all), Ppm(cooled.Separated))
                : texts.Say("With {0} of water, none drops out on cooling.", Ppm(all));
        }

        var separation = curve.SeparationPoint(all);
        if (!separation.StaysDissolved && !separation.StaysFree)
        {
            yield return texts.Say(
                "Water separates below {0}.",
                celsius.Text(texts, texts.Number(celsius.From(separation.Temperature.DegreesCelsius), 1))
            );
        }
    }

    private string Ppm(MassFraction content) =>
        $"{texts.Number(content.PartsPerMillion, Math.Max(content.PartsPerMillion / 100, 0.1))} mg/kg";

    /// <summary>A figure of the curve, which is hardly known to some per cent.</summary>
    private string Held(Temperature at) =>
        $"{texts.Number(Held(at.DegreesCelsius), Held(at.DegreesCelsius) / 20)} mg/kg";

    private string Degrees(Temperature at) => celsius.Text(texts, texts.Number(celsius.From(at.DegreesCelsius), 0.1));
}
