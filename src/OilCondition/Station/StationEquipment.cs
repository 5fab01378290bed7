using OilCondition.Treatment;

namespace OilCondition;

/// <summary>Something that the plant has to treat oil with, and where it can be connected.</summary>
public sealed class StationEquipment
{
    internal StationEquipment(
        string id,
        string name,
        ITreatment treatment,
        IReadOnlyList<string> connectsTo,
        EquipmentTerms terms,
        DischargePump? dischargePump = null,
        VacuumPump? vacuumPump = null
    )
    {
        DischargePump = dischargePump;
        VacuumPump = vacuumPump;
        Id = id;
        Name = name;
        Treatment = treatment;
        ConnectsTo = connectsTo;
        Terms = terms;
    }

    /// <summary>Stable identifier.</summary>
    public string Id { get; }

    /// <summary>What people call it.</summary>
    public string Name { get; }

    /// <summary>What it does to an oil.</summary>
    public ITreatment Treatment { get; }

    /// <summary>Identifiers of the machines that it can be connected to; empty for all.</summary>
    public IReadOnlyList<string> ConnectsTo { get; }

    /// <summary>What it takes to have it at a machine.</summary>
    public EquipmentTerms Terms { get; }

    /// <summary>The pump that draws oil out of its vacuum chamber; null where the file does not describe it.</summary>
    public DischargePump? DischargePump { get; }

    /// <summary>Its vacuum pump; null where the file does not describe it.</summary>
    public VacuumPump? VacuumPump { get; }

    /// <summary>Whether it can be connected to a machine.</summary>
    /// <param name="machine">The machine.</param>
    /// <returns>True unless the file names other machines only.</returns>
    public bool FitsOn(Machine machine)
    {
        Text.Guard.NotNull(machine);
        return ConnectsTo.Count == 0 || ConnectsTo.Contains(machine.Id);
    }

    /// <inheritdoc/>
    public override string ToString() => $"{Id} {Name} ({Treatment.Name})";
}
