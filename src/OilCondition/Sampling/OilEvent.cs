using OilCondition.Text;

namespace OilCondition;

/// <summary>Something that was done to an oil: <see cref="OilChange"/>, <see cref="TopUp"/> or <see cref="TreatmentRun"/>.</summary>
public abstract class OilEvent
{
    private protected OilEvent(DateTimeOffset at, string name) => At = Guard.Moment(at, name);

    /// <summary>When it was done, or begun.</summary>
    public DateTimeOffset At { get; }
}
