using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>The records of a history, each with its oil charge.</summary>
internal static class RecordsOfHistory
{
    public static IEnumerable<FrameRecord> Of(OilHistory history)
    {
        var machine = Guard.NotNull(history).Machine.Id;
        var chargeAt = Charges(history);
        foreach (var sample in history.Samples)
        {
            yield return new FrameRecord(machine, chargeAt(sample.TakenAt), null, null, sample, null);
        }

        chargeAt = Charges(history);
        foreach (var reading in history.SensorReadings)
        {
            yield return new FrameRecord(machine, chargeAt(reading.At), null, null, null, reading);
        }
    }

    /// <summary>The charge at moments that never go back; it is asked for only where an oil change lies between two of them.</summary>
    private static Func<DateTimeOffset, string> Charges(OilHistory history)
    {
        DateTimeOffset[] changes = [.. history.Events.OfType<OilChange>().Select(change => change.At)];
        var (passed, charge) = (0, (string?)null);
        return at =>
        {
            var before = passed;
            while (passed < changes.Length && changes[passed] <= at)
            {
                passed++;
            }

            return charge = charge is null || passed > before ? history.ChargeAt(at).ToString() : charge;
        };
    }
}
