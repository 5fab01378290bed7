using System.Diagnostics.CodeAnalysis;
using OilCondition.Text;

namespace OilCondition;

/// <summary>A plant as its station file describes it: machines with their oils, events and limits, and the equipment at hand.</summary>
/// <remarks>
/// The file is JSON; docs/station.md names every field with its unit. Reading names all faults at once, each with its place; nothing is
/// skipped in silence. The file says what the plant is and what was done to its oils. Samples and sensor readings come from elsewhere and are
/// joined by <see cref="StationMachine.History"/>.
/// </remarks>
/// <example>
/// <code>
/// var station = Station.Parse(File.ReadAllText("station.json"));
/// foreach (var machine in station.Machines)
/// {
///     var history = machine.History(samples.SamplesOf(machine.Machine.Id), sensorReadings: []);
/// }
/// </code>
/// </example>
public sealed partial class Station
{
    internal Station(
        string name,
        string note,
        DateTimeOffset? asOf,
        IReadOnlyList<StationMachine> machines,
        IReadOnlyList<StationEquipment> equipment,
        StationPrices? prices,
        IReadOnlyList<Way> travel,
        CrewHours? crew
    )
    {
        Name = name;
        Note = note;
        AsOf = asOf;
        Machines = machines;
        Equipment = equipment;
        Prices = prices;
        Travel = travel;
        Crew = crew;
    }

    /// <summary>What the plant is called.</summary>
    public string Name { get; }

    /// <summary>A remark; empty where there is none.</summary>
    public string Note { get; }

    /// <summary>The moment up to which the file tells; null where it does not say.</summary>
    public DateTimeOffset? AsOf { get; }

    /// <summary>The machines, in the order of the file.</summary>
    public IReadOnlyList<StationMachine> Machines { get; }

    /// <summary>What the plant has to treat oil with, in the order of the file; after it the trains that are made of it.</summary>
    public IReadOnlyList<StationEquipment> Equipment { get; }

    /// <summary>The plant's prices; null where the file has none.</summary>
    public StationPrices? Prices { get; }

    /// <summary>Ways between places, in the order of the file; a way back takes as long unless it is stated. Empty where the file has none.</summary>
    public IReadOnlyList<Way> Travel { get; }

    /// <summary>When a unit can be connected and taken off; null where the file does not say, and someone always can.</summary>
    public CrewHours? Crew { get; }

    /// <summary>Reads a station file.</summary>
    /// <param name="json">The JSON text.</param>
    /// <param name="limitSets">Limit sets that stand in files of their own, by the names that machines give; beside those in the file.</param>
    /// <param name="catalog">Measurands that may be named; null for the built-in ones.</param>
    /// <returns>The station.</returns>
    /// <exception cref="FormatException">The text is no JSON or has faults; the message names all of them with their places.</exception>
    public static Station Parse(
        string json,
        IReadOnlyDictionary<string, LimitSet>? limitSets = null,
        MeasurandCatalog? catalog = null
    ) => StationReader.Read(json, limitSets, catalog ?? MeasurandCatalog.BuiltIn);

    /// <summary>The machine with an identifier.</summary>
    /// <param name="id">Its identifier, as in the file.</param>
    /// <param name="machine">The machine, or null.</param>
    /// <returns>Whether the station has it.</returns>
    public bool TryMachine(string id, [NotNullWhen(true)] out StationMachine? machine)
    {
        Guard.NotNull(id);
        machine = Machines.FirstOrDefault(one => one.Machine.Id == id);
        return machine is not null;
    }

    /// <inheritdoc/>
    public override string ToString() => $"{Name}: {Machines.Count} machines, {Equipment.Count} pieces of equipment";
}
