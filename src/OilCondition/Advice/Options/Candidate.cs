using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition;

/// <summary>A way to treat an oil with what the plant has or can hire: one piece of equipment, a train of the station file, or two pieces in a row.</summary>
internal sealed record Candidate(
    string Id,
    Words Name,
    ITreatment Treatment,
    EquipmentTerms Terms,
    IReadOnlyList<string> Equipment,
    bool Connects,
    Words? Experience = null
)
{
    private const ContaminationForms AnyWater =
        ContaminationForms.FreeWater | ContaminationForms.EmulsifiedWater | ContaminationForms.DissolvedWater;

    /// <summary>All ways for a machine. Where water and dirt are both to be treated, each that dries is also followed by each that filters.</summary>
    public static IReadOnlyList<Candidate> For(Station station, Machine machine, bool needsBoth)
    {
        var single = station.Equipment.Select(one => Of(one, station, machine)).ToList();
        return needsBoth ? [.. single, .. Pairs(single)] : single;
    }

    /// <summary>Whether it fills new oil, alone or as a stage.</summary>
    public bool FillsNewOil =>
        Treatment is DrainAndRefill
        || (Treatment is TreatmentTrain train && train.Stages.Any(stage => stage.Treatment is DrainAndRefill));

    /// <summary>Electrical power while it works: heater and motors, of a train its hungriest stage.</summary>
    public Power PowerNeed => PowerOf(Treatment, withHeater: true);

    /// <summary>Electrical power without its heaters: less than that, and it cannot be run at all.</summary>
    public Power LeastPower => PowerOf(Treatment, withHeater: false);

    /// <summary>The same way with its heaters turned down to what the power at hand leaves them.</summary>
    public Candidate Within(Power power) => this with { Treatment = Within(Treatment, (double)power.Watts) };

    /// <summary>The same way with what its unit really removed on the plant's own runs.</summary>
    public Candidate With(VacuumDehydration unit, VacuumDehydration found) =>
        this with
        {
            Treatment =
                ReferenceEquals(Treatment, unit) ? found
                : Treatment is TreatmentTrain train ? train.With(one => ReferenceEquals(one, unit) ? found : one)
                : Treatment,
        };

    private static Candidate Of(StationEquipment equipment, Station station, Machine machine) =>
        new(
            equipment.Id,
            _ => equipment.Name,
            equipment.Treatment,
            equipment.Terms,
            equipment.Treatment is TreatmentTrain train
                ?
                [
                    .. station
                        .Equipment.Where(one =>
                            train.Stages.Any(stage => ReferenceEquals(stage.Treatment, one.Treatment))
                        )
                        .Select(one => one.Id),
                ]
                : [equipment.Id],
            equipment.FitsOn(machine)
        );

    private static IEnumerable<Candidate> Pairs(List<Candidate> single)
    {
        var parts = single
            .Where(one => one.Connects && one.Treatment.Kind is not (null or TreatmentKind.DrainAndRefill))
            .ToList();
        var stated = single.Select(one => string.Join("+", one.Equipment)).ToList();
        return from dries in parts
            where (dries.Treatment.Reaches & AnyWater) != ContaminationForms.None
            from filters in parts
            where
                (filters.Treatment.Reaches & ContaminationForms.Particles) != ContaminationForms.None
                && (filters.Treatment.Reaches & ContaminationForms.DissolvedWater) == ContaminationForms.None
                && filters.Id != dries.Id
                && !stated.Contains($"{dries.Id}+{filters.Id}")
            select new Candidate(
                $"{dries.Id}+{filters.Id}",
                say => say.InARow(dries.Name(say), filters.Name(say)),
                new TreatmentTrain(
                    $"{dries.Treatment.Name}, then {filters.Treatment.Name}",
                    TrainStage.Until(dries.Treatment),
                    TrainStage.Until(filters.Treatment)
                ),
                EquipmentTerms.Together([dries.Terms, filters.Terms]),
                [dries.Id, filters.Id],
                true
            );
    }

    private static ITreatment Within(ITreatment treatment, double watts)
    {
        Power Heater(Power heater, Power motor) =>
            Power.FromWatts(Math.Max(0, Math.Min((double)heater.Watts, watts - (double)motor.Watts)));
        SideLoop Loop(SideLoop loop) => loop.With(Heater(loop.HeaterPower, loop.MotorPower));
        return treatment switch
        {
            VacuumDehydration one => one.With(
                one.Unit.With(heaterPower: Heater(one.Unit.HeaterPower, one.Unit.MotorPower))
            ),
            FineFiltration one => new FineFiltration(Loop(one.Loop), one.Filter, one.Elements),
            Coalescer one => new Coalescer(Loop(one.Loop), one.RemovalPerPass, one.Elements),
            WaterAbsorbingElements one => new WaterAbsorbingElements(
                Loop(one.Loop),
                one.RemovalPerPass,
                one.CapacityOfElement
            ),
            Centrifuge one => new Centrifuge(
                Loop(one.Loop),
                one.EquivalentArea,
                one.DropletDiameter,
                one.EmulsionDiameter,
                one.ParticleDensity
            ),
            TreatmentTrain train => train.With(one => Within(one, watts)),
            _ => treatment,
        };
    }

    private static Power PowerOf(ITreatment treatment, bool withHeater)
    {
        Power Loop(SideLoop loop) => (withHeater ? loop.HeaterPower : Power.Zero) + loop.MotorPower;
        return treatment switch
        {
            VacuumDehydration one => (withHeater ? one.Unit.HeaterPower : Power.Zero) + one.Unit.MotorPower,
            FineFiltration one => Loop(one.Loop),
            Coalescer one => Loop(one.Loop),
            WaterAbsorbingElements one => Loop(one.Loop),
            Centrifuge one => Loop(one.Loop),
            HeadSpacePurge one => one.MotorPower,
            DrainAndRefill one => one.MotorPower,
            TreatmentTrain train => Power.FromWatts(
                train
                    .Stages.Select(stage =>
                        (double)(stage.Treatment is { } part ? PowerOf(part, withHeater) : stage.Heater!.Power).Watts
                    )
                    .Max()
            ),
            _ => Power.Zero,
        };
    }
}
