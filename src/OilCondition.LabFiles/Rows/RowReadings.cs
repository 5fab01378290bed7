using System.Collections;

namespace OilCondition.LabFiles;

/// <summary>The readings of the row at hand, in one place that is used again for each row: who wants to keep them copies them.</summary>
internal sealed class RowReadings : IReadOnlyDictionary<Measurand, Reading>
{
    private readonly List<KeyValuePair<Measurand, Reading>> pairs = [];

    public int Count => pairs.Count;

    public IEnumerable<Measurand> Keys => pairs.Select(pair => pair.Key);

    public IEnumerable<Reading> Values => pairs.Select(pair => pair.Value);

    public Reading this[Measurand key] =>
        TryGetValue(key, out var reading) ? reading : throw new KeyNotFoundException(key.Id);

    public void Clear() => pairs.Clear();

    public void Add(Measurand measurand, Reading reading) => pairs.Add(new(measurand, reading));

    public bool ContainsKey(Measurand key) => TryGetValue(key, out _);

    /// <summary>Looks through them: a row has each of some forty measurands once.</summary>
    public bool TryGetValue(Measurand key, out Reading value)
    {
        foreach (var pair in pairs)
        {
            if (pair.Key.Equals(key))
            {
                value = pair.Value;
                return true;
            }
        }

        value = default;
        return false;
    }

    public IEnumerator<KeyValuePair<Measurand, Reading>> GetEnumerator() => pairs.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
