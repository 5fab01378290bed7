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
    private readonly Shown degrees = new(page.Texts, Measurands.OilTemperature);
    private readonly Shown content = new(page.Texts, Measurands.WaterContent);

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
        var x = NumberAxis.Around(degrees.Label, [degrees.From(low), degrees.From(high)], false, texts);
        var y = NumberAxis.Around(
            content.In(page.Sentences.Topic(ProblemTopic.Water)),
            layers.SelectMany(Heights).Append(0),
            false,
            texts,
            isFromZero: true
        );
        return new Scene(title, Lines(), x, y)
        {
            Layers = layers,
            Levels = water is { } all
                ?
                [
                    new LevelMark(
                        content.From(all.PartsPerMillion),
                        texts.Say("saturation.all", ("water", Text(all))),
                        Ink.Blue,
                        Dash.Long
                    ),
                ]
                : [],
            Moments = isOfMachine ? [.. Moments()] : [],
        };
    }

    private IEnumerable<Moment> Moments() =>
        [
            new Moment(
                degrees.From(running.DegreesCelsius),
                texts.Say("saturation.running", ("temperature", Text(running))),
                Ink.Vermilion,
                Dash.Long
            ),
            new Moment(
                degrees.From(standstill.DegreesCelsius),
                texts.Say("saturation.standstill", ("temperature", Text(standstill))),
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

    private double Held(double celsius) =>
        curve.SaturationAt(Temperature.FromDegreesCelsius(celsius)).Content.PartsPerMillion;

    private Spot Spot(double celsius, double ppm) => new(degrees.From(celsius), content.From(ppm));

    private IEnumerable<Layer> Curves(double[] temperatures)
    {
        Trace Part(string? key, Dash dash, Func<double, bool> which) =>
            new(key, Ink.Black, dash, [.. temperatures.Where(which).Select(at => Spot(at, Held(at)))], 2.2f);
        var (lowest, highest) = (curve.Lowest.DegreesCelsius, curve.Highest.DegreesCelsius);
        yield return Part(texts["saturation.curve"], Dash.Solid, at => at >= lowest && at <= highest);
        var (below, above) = (temperatures[0] < lowest, temperatures[temperatures.Length - 1] > highest);
        if (below)
        {
            yield return Part(texts["saturation.extrapolated"], Dash.Dots, at => at <= lowest);
        }

        if (above)
        {
            yield return Part(below ? null : texts["saturation.extrapolated"], Dash.Dots, at => at >= highest);
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
            texts.Say("curve.band", ("confidence", texts.Reported(100 * confidence))),
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
            texts.Say("saturation.drops-out", ("water", Part(cooled.Separated, all))),
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
                texts["saturation.measured"],
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
                texts["saturation.dissolved"],
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
                    "saturation.told-measured",
                    ("lowest", Text(standstill)),
                    ("highest", Text(running)),
                    ("cold", Held(standstill)),
                    ("warm", Held(running))
                ),
            ];
        }

        var lines = new List<string>
        {
            texts.Say(
                "saturation.told",
                ("warm", Held(running)),
                ("running", Text(running)),
                ("cold", Held(standstill)),
                ("standstill", Text(standstill))
            ),
        };
        if (water is { } all)
        {
            lines.AddRange(Of(all));
        }
        else
        {
            lines.Add(texts["saturation.unknown-water"]);
        }

        if (!curve.Covers(running) || !curve.Covers(standstill))
        {
            lines.Add(texts["saturation.told-extrapolated"]);
        }

        return lines;
    }

    private IEnumerable<string> Of(MassFraction all)
    {
        var free = curve.Split(all, running).Free;
        if (free.PartsPerMillion > 0)
        {
            yield return texts.Say("saturation.told-free", ("water", Text(all)), ("free", Part(free, all)));
        }

        if (Cooled() is { } cooled)
        {
            yield return cooled.Separated.PartsPerMillion > 0
                ? texts.Say("saturation.told-out", ("water", Text(all)), ("out", Part(cooled.Separated, all)))
                : texts.Say("saturation.told-none", ("water", Text(all)));
        }

        var separation = curve.SeparationPoint(all);
        if (!separation.StaysDissolved && !separation.StaysFree)
        {
            yield return texts.Say("saturation.separates", ("temperature", Text(separation.Temperature)));
        }
    }

    private string Text(MassFraction water) => content.Text(water.PartsPerMillion);

    private string Text(Temperature at) => page.Sentences.Text(at);

    /// <summary>A part of all water, known no better than that.</summary>
    private string Part(MassFraction part, MassFraction all) =>
        content.Exact(part.PartsPerMillion, all.PartsPerMillion);

    private string Held(Temperature at) => content.Exact(Held(at.DegreesCelsius));
}
