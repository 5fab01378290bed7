using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>What it takes to have a piece of equipment at a machine: hire, connecting, standstill, attendance, and what lies in the store.</summary>
public sealed record EquipmentTerms
{
    /// <summary>Hours of connecting where nobody states them: common practice, no source.</summary>
    private const double UsualConnectHours = 2;

    /// <summary>States the terms. Name the arguments; what is left out is that of a unit of the plant's own.</summary>
    /// <param name="isHired">Whether it is hired, and not the plant's own.</param>
    /// <param name="leadTime">From the order until it stands at the machine, 0 to 10 years.</param>
    /// <param name="dayRate">Hire for each day begun, 0 or more, in the plant's currency; null where not known, or where it is owned.</param>
    /// <param name="mobilisation">To bring it and take it away, 0 or more, in the plant's currency; null where not known, or where it is owned.</param>
    /// <param name="connectTime">To connect it, and again to take it off, 0 to 30 days; null for 2 h (common practice, no source).</param>
    /// <param name="needsStandstill">Whether the machine must stand while it works.</param>
    /// <param name="isAttended">Whether somebody must stand by: then it works in the reachable hours only.</param>
    /// <param name="elementsInStock">Elements in the store, 0 or more; null where not known, or as many as are needed.</param>
    /// <param name="oilInStock">New oil in the store, 0 or more; null where not known, or as much as is needed.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure lies outside its range.</exception>
    public EquipmentTerms(
        bool isHired = false,
        TimeSpan leadTime = default,
        double? dayRate = null,
        double? mobilisation = null,
        TimeSpan? connectTime = null,
        bool needsStandstill = false,
        bool isAttended = false,
        int? elementsInStock = null,
        Volume? oilInStock = null
    )
    {
        Guard.InRange(leadTime.TotalDays, 0, 3653, "days", nameof(leadTime));
        ConnectTime = connectTime ?? Elapsed.FromHours(UsualConnectHours);
        ConnectTimeIsStated = connectTime is not null;
        Guard.InRange(ConnectTime.TotalDays, 0, 30, "days", nameof(connectTime));
        Guard.InRange(dayRate ?? 0, 0, 1e12, "(currency)", nameof(dayRate));
        Guard.InRange(mobilisation ?? 0, 0, 1e12, "(currency)", nameof(mobilisation));
        Guard.InRange(elementsInStock ?? 0, 0, 1e9, "elements", nameof(elementsInStock));
        Guard.InRange(oilInStock?.Liters ?? 0, 0, 1e9, "L", nameof(oilInStock));
        IsHired = isHired;
        LeadTime = leadTime;
        DayRate = dayRate;
        Mobilisation = mobilisation;
        NeedsStandstill = needsStandstill;
        IsAttended = isAttended;
        ElementsInStock = elementsInStock;
        OilInStock = oilInStock;
    }

    /// <summary>Whether it is hired.</summary>
    public bool IsHired { get; }

    /// <summary>From the order until it stands at the machine.</summary>
    public TimeSpan LeadTime { get; }

    /// <summary>Hire for each day begun; null where not known, or where it is owned.</summary>
    public double? DayRate { get; }

    /// <summary>To bring it and take it away; null where not known, or where it is owned.</summary>
    public double? Mobilisation { get; }

    /// <summary>To connect it, and again to take it off.</summary>
    public TimeSpan ConnectTime { get; }

    /// <summary>Whether the machine must stand while it works.</summary>
    public bool NeedsStandstill { get; }

    /// <summary>Whether somebody must stand by.</summary>
    public bool IsAttended { get; }

    /// <summary>Elements in the store; null where not known, or as many as are needed.</summary>
    public int? ElementsInStock { get; }

    /// <summary>New oil in the store; null where not known, or as much as is needed.</summary>
    public Volume? OilInStock { get; }

    internal bool ConnectTimeIsStated { get; }

    /// <summary>The terms of several pieces that work one after another as one job: hired together, each connected once.</summary>
    internal static EquipmentTerms Together(IReadOnlyList<EquipmentTerms> parts)
    {
        static double? Sum(IEnumerable<double?> all) => all.Any(one => one is null) ? null : all.Sum(one => one!.Value);
        var hired = parts.Where(one => one.IsHired).ToList();
        return new EquipmentTerms(
            hired.Count > 0,
            parts.Select(one => one.LeadTime).DefaultIfEmpty().Max(),
            hired.Count > 0 ? Sum([.. hired.Select(one => one.DayRate)]) : null,
            hired.Count > 0 ? Sum([.. hired.Select(one => one.Mobilisation)]) : null,
            TimeSpan.FromTicks(parts.Sum(one => one.ConnectTime.Ticks)),
            parts.Any(one => one.NeedsStandstill),
            parts.Any(one => one.IsAttended),
            parts.Select(one => one.ElementsInStock).Where(one => one is not null).Min(),
            parts.Select(one => one.OilInStock).FirstOrDefault(one => one is not null)
        );
    }

    /// <summary>The terms in a few words.</summary>
    /// <returns>For example <c>hired, 5 days ahead, connected in 2 h</c>.</returns>
    public override string ToString() =>
        (IsHired ? "hired" : "the plant's own")
        + (LeadTime > TimeSpan.Zero ? $", {PlainText.Number(LeadTime.TotalDays)} days ahead" : "")
        + $", connected in {PlainText.Number(ConnectTime.TotalHours)} h"
        + (NeedsStandstill ? ", the machine stands" : "")
        + (IsAttended ? ", attended" : "");
}
