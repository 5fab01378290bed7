using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition;

/// <summary>Reads the machines of a station file.</summary>
internal sealed class MachineReader(
    JsonEntry root,
    IReadOnlyList<StationOil> oils,
    IReadOnlyDictionary<string, LimitSet> named,
    IReadOnlyList<LimitSet> sets,
    IReadOnlyList<StationEvent> events
)
{
    public StationMachine? Read(JsonEntry entry)
    {
        entry.Known([
            "id",
            "name",
            "oil",
            "oilLitres",
            "runningCelsius",
            "standstillCelsius",
            "limits",
            "sensorLogs",
            "tank",
            "note",
            .. SiteReader.SiteFields,
        ]);
        var id = entry.Text("id");
        var name = entry.Text("name");
        var oil = OilOf(entry);
        var litres = entry.Number("oilLitres");
        var running = entry.Number("runningCelsius");
        var standstill = entry.Number("standstillCelsius");
        var limits = LimitsOf(entry);
        var logs = entry.TextsIfAny("sensorLogs") ?? [];
        var site = SiteReader.Site(entry);
        if (id is null || name is null || oil is null || litres is null || running is null || standstill is null)
        {
            return null;
        }

        var machine = entry.Made(() =>
            new Machine(
                id,
                name,
                oil.Oil,
                Volume.FromLiters(litres.Value),
                Temperature.FromDegreesCelsius(running.Value),
                Temperature.FromDegreesCelsius(standstill.Value)
            )
        );
        return machine is null || site is null
            ? null
            : new StationMachine(
                machine,
                limits,
                [.. events.Where(one => one.Machine == id).Select(one => one.Event)],
                logs,
                Tank(entry, machine),
                oil.Treated,
                site
            );
    }

    private StationOil? OilOf(JsonEntry entry)
    {
        if (entry.Text("oil") is not { } id)
        {
            return null;
        }

        var known = root.NamesIn("oils", "id");
        if (!known.Contains(id))
        {
            entry.Fault("oil", $"'{id}' is not the id of an oil; there are: {string.Join(", ", known)}.");
        }

        return oils.FirstOrDefault(one => one.Id == id);
    }

    private LimitSet? LimitsOf(JsonEntry entry)
    {
        if (!entry.Has("limits") || entry.Text("limits") is not { } name)
        {
            return null;
        }

        if (named.TryGetValue(name, out var set))
        {
            return set;
        }

        IReadOnlyList<string> known =
        [
            .. named.Keys.OrderBy(key => key, StringComparer.Ordinal),
            .. root.NamesIn("limitSets", "name"),
        ];
        if (!known.Contains(name))
        {
            entry.Fault("limits", $"'{name}' is not the name of a limit set; there are: {string.Join(", ", known)}.");
        }

        return sets.FirstOrDefault(one => one.Name == name);
    }

    private static Reservoir? Tank(JsonEntry entry, Machine machine)
    {
        if (entry.ObjectIfAny("tank") is not { } tank)
        {
            return null;
        }

        tank.Known(
            "ambientCelsius",
            "lossWattPerKelvin",
            "waterIngressGramsPerHour",
            "highestCelsius",
            "steelKilojoulePerKelvin",
            "heatInputKilowatts"
        );
        var ambient = tank.Number("ambientCelsius");
        var loss = tank.Number("lossWattPerKelvin");
        var ingress = tank.NumberIfAny("waterIngressGramsPerHour") ?? 0;
        var highest = tank.NumberIfAny("highestCelsius");
        var steel = tank.NumberIfAny("steelKilojoulePerKelvin") ?? 0;
        return ambient is null || loss is null
            ? null
            : tank.Made(() =>
                new Reservoir(
                    machine.ChargeVolume,
                    start: machine.RunningTemperature,
                    ambient: Temperature.FromDegreesCelsius(ambient.Value),
                    lossWattPerKelvin: loss.Value,
                    waterIngress: MassFlow.FromGramsPerHour(ingress),
                    highestTemperature: highest is { } stated ? Temperature.FromDegreesCelsius(stated) : null,
                    steel: Entropy.FromKilojoulesPerKelvin(steel),
                    heatInput: Power.FromKilowatts(tank.NumberIfAny("heatInputKilowatts") ?? 0)
                )
            );
    }
}
