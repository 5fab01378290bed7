using System.Collections;
using System.Reflection;
using UnitsNet;

namespace OilCondition.Tests.Cleanup;

/// <summary>All numbers that an answer holds, found by its public properties.</summary>
public static class AllNumbers
{
    /// <summary>Names of numbers that are NaN or infinite, at any depth.</summary>
    public static IReadOnlyList<string> NotFinite(object answer)
    {
        var found = new List<string>();
        Walk(answer, answer.GetType().Name, found, []);
        return found;
    }

    private static void Walk(object? value, string path, List<string> found, HashSet<object> seen)
    {
        switch (value)
        {
            case null or string or Enum or DateTimeOffset or bool:
                return;
            case double number:
                Note(number, path, found);
                return;
            case IQuantity quantity:
                Note((double)quantity.Value, path, found);
                return;
            case IEnumerable items:
                foreach (var item in items.Cast<object>().Take(200))
                {
                    Walk(item, path + "[]", found, seen);
                }

                return;
        }

        var type = value.GetType();
        if (
            type.Namespace?.StartsWith("OilCondition", StringComparison.Ordinal) != true
            || (!type.IsValueType && !seen.Add(value))
        )
        {
            return;
        }

        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance))
        {
            if (property.GetIndexParameters().Length == 0)
            {
                Walk(property.GetValue(value), path + "." + property.Name, found, seen);
            }
        }
    }

    private static void Note(double number, string path, List<string> found)
    {
        if (!double.IsFinite(number))
        {
            found.Add($"{path} = {number}");
        }
    }
}
