using OilCondition.Prognosis;
using OilCondition.Text;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition;

/// <summary>The task that a machine sets: its own oil as it is now, with every figure and where it comes from.</summary>
/// <remarks>
/// What the station file does not tell is filled in by common practice, and said: density 870 kg/m³, viscosity index 95, oil no hotter than 80 °C, a bare
/// sheltered tank of one and a half times the oil, shaped like a cube, in surroundings as cold as the machine gets. A saturation curve is never filled in.
/// </remarks>
internal sealed class MachineTask
{
    private const double UsualViscosityIndex = 95;
    private const double UsualHighestCelsius = 80;
    private const double TankOverOil = 1.5;

    private MachineTask(TreatmentJob job, IngressEstimate? ingress, IReadOnlyList<TreatmentDecision.Figure> figures)
    {
        Job = job;
        Ingress = ingress;
        Figures = figures;
    }

    public TreatmentJob Job { get; }

    /// <summary>What comes in by the history; null where the station file states it, or the density is not known.</summary>
    public IngressEstimate? Ingress { get; }

    public IReadOnlyList<TreatmentDecision.Figure> Figures { get; }

    /// <summary>The task; null with what is missing.</summary>
    public static MachineTask? Of(
        StationMachine station,
        ConditionAssessment assessment,
        TargetProposal target,
        bool needsWater,
        out Words? missing
    )
    {
        var builder = new Builder(station, assessment);
        if (needsWater && station.Machine.Oil.SaturationCurve is null)
        {
            missing = say => say.NoSaturation();
            return null;
        }

        if (builder.Oil(out missing) is not { } oil)
        {
            return null;
        }

        var reservoir = builder.Tank(oil, out var ingress);
        var job = new TreatmentJob(oil, reservoir, builder.Contamination(), target.ToBeReached);
        return new MachineTask(job, ingress, builder.Figures);
    }

    /// <summary>The same task with the water and the counts at factors of what was read, and with other errors.</summary>
    public TreatmentJob Scaled(double water, double counts)
    {
        var now = Job.Contamination;
        var particles = now.Particles;
        return Job.With(
            contamination: new Contamination(
                MassFraction.FromPartsPerMillion(
                    Math.Min(0.99 * PhysicalRange.HighestWaterMgPerKg, now.Water.PartsPerMillion * water)
                ),
                now.EmulsifiedShare,
                ParticleLevels.Computed(
                    particles.At4PerMillilitre * counts,
                    particles.At6PerMillilitre * counts,
                    particles.At14PerMillilitre * counts
                )
            )
        );
    }

    private sealed class Builder(StationMachine station, ConditionAssessment assessment)
    {
        private static readonly Source File = Source.UserData("station file");

        private readonly List<TreatmentDecision.Figure> figures = [];

        public IReadOnlyList<TreatmentDecision.Figure> Figures => figures;

        private Machine Machine => station.Machine;

        public TreatedOil? Oil(out Words? missing)
        {
            missing = null;
            if (station.TreatedOil is { } stated)
            {
                Add("oil", stated.ToString()!, File);
                return stated;
            }

            if (New(Measurands.Viscosity40) is not { } at40 || !(at40 is >= 5 and <= 10_000))
            {
                missing = say => say.NoViscosity();
                return null;
            }

            var density = New(Measurands.Density15) ?? OilProperties.UsualDensityAt15;
            if (New(Measurands.Density15) is null)
            {
                Assumed("density-15c", density, "kg/m³", "a mineral oil");
            }

            var at100 = New(Measurands.Viscosity100);
            if (at100 is null)
            {
                at100 = ViscosityIndex
                    .ViscosityAt100(KinematicViscosity.FromCentistokes(at40), UsualViscosityIndex)
                    .Centistokes;
                Assumed("viscosity-index", UsualViscosityIndex, "", "a mineral oil");
            }

            Assumed("highest-temperature-of-the-oil", UsualHighestCelsius, "°C", "the oil's maker is to be asked");
            // Without a curve of its own the task does not ask for water, and no floor of it is told.
            var curve = Machine.Oil.SaturationCurve ?? PublishedSaturationCurves.TransformerMineralOil;
            return new TreatedOil(
                OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(density)),
                curve,
                ViscosityTemperatureLine.FromTwoPoints(
                    Temperature.FromDegreesCelsius(40),
                    KinematicViscosity.FromCentistokes(at40),
                    Temperature.FromDegreesCelsius(100),
                    KinematicViscosity.FromCentistokes(at100.Value)
                ),
                Temperature.FromDegreesCelsius(UsualHighestCelsius)
            );
        }

        public Reservoir Tank(TreatedOil oil, out IngressEstimate? ingress)
        {
            ingress = null;
            var tank = station.Tank;
            if (tank is null)
            {
                var area = 6 * Math.Pow(TankOverOil * Machine.ChargeVolume.CubicMeters, 2.0 / 3);
                var loss = TankHeatLoss
                    .Guide(TankSurface.ShelteredBare, Temperature.FromDegreesCelsius(27))
                    .WattPerKelvin(Area.FromSquareMeters(area));
                Assumed("heat-loss-of-the-tank", loss, "W/K", "a bare sheltered tank, half full of air again");
                tank = new Reservoir(
                    Machine.ChargeVolume,
                    Machine.RunningTemperature,
                    Temperature.FromDegreesCelsius(
                        Math.Min(80, Math.Max(-40, Machine.StandstillTemperature.DegreesCelsius))
                    ),
                    loss
                );
            }
            else
            {
                Add("tank", tank.ToString(), File);
            }

            if (tank.WaterIngress.KilogramsPerHour > 0)
            {
                return tank;
            }

            ingress = IngressEstimate.Of(
                assessment.History,
                oil.Properties.At(Temperature.FromDegreesCelsius(15)).Density,
                assessment.Options.AsOf
            );
            Add("water-that-comes-in", ingress.ToString()!, Derived("readings between treatments"));
            return ingress is IngressEstimate.Rising rising ? tank.With(waterIngress: rising.Rate) : tank;
        }

        public Contamination Contamination()
        {
            var water = 0.0;
            if (assessment.Water is WaterInOil.Split split)
            {
                water = split.Point.Reading.Value;
                Add(
                    EvidenceItem.Reading("water-content", split.Point.Reading, Measurands.WaterContent),
                    Read(split.Point)
                );
            }

            var share = station.Site.EmulsifiedShare ?? default;
            if (station.Site.EmulsifiedShare is { } stated)
            {
                Add(EvidenceItem.Figure("emulsified-share-of-the-free-water", stated.Percent, "%"), File);
            }
            else if (assessment.Water is WaterInOil.Split { Running.HasFreeWater: true })
            {
                Assumed(
                    "emulsified-share-of-the-free-water",
                    0,
                    "%",
                    "nobody looked at a jar of this oil left standing"
                );
            }

            return new Contamination(
                MassFraction.FromPartsPerMillion(Math.Min(water, 0.99 * PhysicalRange.HighestWaterMgPerKg)),
                share,
                Particles()
            );
        }

        private ParticleLevels Particles()
        {
            double? Count(Measurand size) =>
                assessment.States.FirstOrDefault(state => state.Measurand.Equals(size))?.Latest is { } latest
                    ? latest.Reading.Value
                    : null;
            var (at4, at6, at14) = (
                Count(Measurands.Particles4),
                Count(Measurands.Particles6),
                Count(Measurands.Particles14)
            );
            if (assessment.Cleanliness is not { } code)
            {
                return ParticleLevels.Computed(0, 0, 0);
            }

            Add("iso-4406-code", code.ToString(), Derived("latest particle counts"));
            Assumed("particles-that-come-in", 0, "a minute", "nobody counted what a filter holds down");
            return at4 >= at6 && at6 >= at14
                ? ParticleLevels.Computed(at4.Value, at6.Value, at14.Value)
                : ParticleLevels.FromCode(code);
        }

        private double? New(Measurand measurand) =>
            Machine.Oil.NewReadings.TryGetValue(measurand, out var reading) ? reading.Value : null;

        private static Source Read(SeriesPoint point) =>
            Derived(
                $"{(point.SampleNumber.Length == 0 ? "sensor" : "sample " + point.SampleNumber)}, {PlainText.Time(point.At)}"
            );

        private static Source Derived(string text) => new(SourceKind.UserData, text);

        private void Assumed(string id, double value, string unit, string why) =>
            Add(EvidenceItem.Number(id, value, unit), Source.CommonPractice(why));

        private void Add(string id, string text, Source source) => Add(EvidenceItem.Word(id, text), source);

        private void Add(EvidenceItem item, Source source) => figures.Add(new TreatmentDecision.Figure(item, source));
    }
}
