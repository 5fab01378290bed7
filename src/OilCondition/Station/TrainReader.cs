using OilCondition.Cleanliness;
using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition;

/// <summary>Reads the trains of a station file: stages that name the equipment of the file, or a heater in the tank.</summary>
internal sealed class TrainReader(IReadOnlyList<StationEquipment> equipment)
{
    public StationEquipment? Read(JsonEntry entry)
    {
        entry.Known("id", "name", "stages", "connectsTo", "note");
        var id = entry.Text("id");
        var name = entry.Text("name");
        var connects = entry.TextsIfAny("connectsTo") ?? [];
        var stages = entry.List("stages", Stage);
        return id is null || name is null || !entry.IsFaultless
            ? null
            : entry.Made(() =>
                new StationEquipment(id, name, new TreatmentTrain(name, [.. stages]), connects, Terms(stages))
            );
    }

    /// <summary>A train takes what its parts take, each once.</summary>
    private EquipmentTerms Terms(IReadOnlyList<TrainStage> stages) =>
        EquipmentTerms.Together([
            .. equipment
                .Where(one => stages.Any(stage => ReferenceEquals(stage.Treatment, one.Treatment)))
                .Select(one => one.Terms),
        ]);

    private TrainStage? Stage(JsonEntry entry)
    {
        if (entry.Has("heaterKilowatts"))
        {
            return Heating(entry);
        }

        entry.Known("equipment", "hours", "waterMgPerKg", "code", "note");
        var id = entry.Text("equipment");
        var hours = entry.NumberIfAny("hours");
        var water = entry.NumberIfAny("waterMgPerKg");
        var code = entry.Has("code") ? Code(entry) : null;
        if (id is null || !entry.IsFaultless)
        {
            return null;
        }

        if (equipment.FirstOrDefault(one => one.Id == id)?.Treatment is not { } treatment)
        {
            var known = string.Join(", ", equipment.Select(one => one.Id));
            entry.Fault("equipment", $"'{id}' is not the id of a piece of equipment; there are: {known}.");
            return null;
        }

        if (hours is not null && (water is not null || code is not null))
        {
            entry.Fault("either 'hours', or 'waterMgPerKg' and 'code', or none of them.");
            return null;
        }

        return entry.Made(() =>
            hours is { } time
                ? TrainStage.For(treatment, Elapsed.FromHours(time))
                : TrainStage.Until(
                    treatment,
                    water is null && code is null
                        ? null
                        : new TreatmentTarget(water is { } ppm ? MassFraction.FromPartsPerMillion(ppm) : null, code)
                )
        );
    }

    private static TrainStage? Heating(JsonEntry entry)
    {
        entry.Known("heaterKilowatts", "heatedSquareMetres", "celsius", "note");
        var power = entry.Number("heaterKilowatts");
        var area = entry.Number("heatedSquareMetres");
        var celsius = entry.Number("celsius");
        return power is null || area is null || celsius is null
            ? null
            : entry.Made(() =>
                TrainStage.Heating(
                    new TankHeater(Power.FromKilowatts(power.Value), Area.FromSquareMeters(area.Value)),
                    Temperature.FromDegreesCelsius(celsius.Value)
                )
            );
    }

    private static CleanlinessCode? Code(JsonEntry entry)
    {
        var text = entry.Text("code");
        if (CleanlinessCode.TryParse(text, out var code))
        {
            return code;
        }

        if (text is not null)
        {
            entry.Fault("code", $"'{text}' is no code such as 18/16/13.");
        }

        return null;
    }
}
