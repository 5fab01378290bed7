using OilCondition.Treatment;

namespace OilCondition;

/// <summary>A machine of a station: what it is, what was done to its oil, and which limits it is judged by.</summary>
public sealed class StationMachine
{
    internal StationMachine(
        Machine machine,
        LimitSet? limits,
        IReadOnlyList<OilEvent> events,
        IReadOnlyList<string> sensorLogs,
        Reservoir? tank,
        TreatedOil? treatedOil,
        MachineSite site
    )
    {
        Machine = machine;
        Limits = limits;
        Events = events;
        SensorLogs = sensorLogs;
        Tank = tank;
        TreatedOil = treatedOil;
        Site = site;
    }

    /// <summary>The machine with its oil, volume, running and standstill temperature.</summary>
    public Machine Machine { get; }

    /// <summary>The limits it is judged by; null where the file names none.</summary>
    public LimitSet? Limits { get; }

    /// <summary>What was done to its oil.</summary>
    public IReadOnlyList<OilEvent> Events { get; }

    /// <summary>Names of its sensor logs, as in the file.</summary>
    public IReadOnlyList<string> SensorLogs { get; }

    /// <summary>Its tank as a treatment must know it; null where the file does not describe it.</summary>
    public Reservoir? Tank { get; }

    /// <summary>
    /// Its oil as a treatment must know it; null unless the file tells its saturation, its density at 15 °C, its viscosity at 40 and 100 °C
    /// and the highest temperature that it may see.
    /// </summary>
    public TreatedOil? TreatedOil { get; }

    /// <summary>What a treatment finds at it: outages, power, reachable hours.</summary>
    public MachineSite Site { get; }

    /// <summary>The machine's history: the events of the file with samples and sensor readings from elsewhere.</summary>
    /// <param name="samples">Laboratory samples, in any order.</param>
    /// <param name="sensorReadings">Sensor readings, in any order.</param>
    /// <returns>The history, with what is wrong with the records.</returns>
    public OilHistory History(IEnumerable<OilSample> samples, IEnumerable<SensorReading> sensorReadings) =>
        OilHistory.Create(Machine, samples, sensorReadings, Events);

    /// <inheritdoc/>
    public override string ToString() => $"{Machine.Id} {Machine.Name}, {Machine.Oil.Name}, {Events.Count} events";
}
