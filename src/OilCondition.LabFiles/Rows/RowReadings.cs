using System.Collections;

namespace OilCondition.LabFiles;

/// <summary>The readings of the row at hand, in one place that is used again for each row: who wants to keep them copies them.</summary>
internal sealed class RowReadings : IReadOnlyDictionary<Measurand, Reading>
{
    private KeyValuePair<Measurand, Reading>[] pairs = new KeyValuePair<Measurand, Reading>[16];
    private int count;

    public int Count => count;

    public IEnumerable<Measurand> Keys => this.Select(pair => pair.Key);

    public IEnumerable<Reading> Values => this.Select(pair => pair.Value);

    public Reading this[Measurand key] =>
        TryGetValue(key, out var reading) ? reading : throw new KeyNotFoundException(key.Id);

    public void Clear() => count = 0;

    public void Add(Measurand measurand, Reading reading)
    {
        if (count == pairs.Length)
        {
            Array.Resize(ref pairs, 2 * count);
        }

        pairs[count++] = new(measurand, reading);
    }

    public bool ContainsKey(Measurand key) => TryGetValue(key, out _);

    /// <summary>Looks through them: a row has each of some forty measurands once.</summary>
    public bool TryGetValue(Measurand key, out Reading value)
    {
        var hash = key.GetHashCode();
        for (var i = 0; i < count; i++)
        {
            if (pairs[i].Key.GetHashCode() == hash && pairs[i].Key.Equals(key))
            {
                value = pairs[i].Value;
                return true;
            }
        }

        value = default;
        return false;
    }

    public IEnumerator<KeyValuePair<Measurand, Reading>> GetEnumerator() => pairs.Take(count).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
