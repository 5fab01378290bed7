using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using UnitsNet;

namespace OilCondition.Tests.Properties;

/// <summary>Everything that a value shows in public, to the last digit and tick, as text: two values of one state have one text.</summary>
internal static class PublicState
{
    public static string Of(object? value)
    {
        var text = new StringBuilder();
        Add(text, value, "");
        return text.ToString();
    }

    private static void Add(StringBuilder text, object? value, string path)
    {
        switch (value)
        {
            case null:
                text.Append(path).Append(" null\n");
                break;
            case double number:
                text.Append(path).Append(' ').Append(number.ToString("R", CultureInfo.InvariantCulture)).Append('\n');
                break;
            case DateTimeOffset at:
                text.Append(path).Append(' ').Append(at.ToString("O", CultureInfo.InvariantCulture)).Append('\n');
                break;
            case string or bool or int or Enum or TimeSpan:
                text.Append(path)
                    .Append(' ')
                    .Append(Convert.ToString(value, CultureInfo.InvariantCulture))
                    .Append('\n');
                break;
            case IQuantity quantity:
                text.Append(path)
                    .Append(' ')
                    .Append(((double)quantity.Value).ToString("R", CultureInfo.InvariantCulture));
                text.Append(' ').Append(quantity.Unit).Append('\n');
                break;
            case Measurand measurand:
                text.Append(path).Append(' ').Append(measurand.Id).Append('\n');
                break;
            case IReadOnlyDictionary<Measurand, Reading> readings:
                text.Append(path).Append(" readings ").Append(readings.Count).Append('\n');
                foreach (var pair in readings.OrderBy(pair => pair.Key.Id, StringComparer.Ordinal))
                {
                    Add(text, pair.Value, $"{path}[{pair.Key.Id}]");
                }

                break;
            case IReadOnlyDictionary<string, string> texts:
                text.Append(path).Append(" texts ").Append(texts.Count).Append('\n');
                foreach (var pair in texts.OrderBy(pair => pair.Key, StringComparer.Ordinal))
                {
                    Add(text, pair.Value, $"{path}[{pair.Key}]");
                }

                break;
            case IEnumerable items:
                var list = items.Cast<object?>().ToList();
                text.Append(path).Append(" list of ").Append(list.Count).Append('\n');
                for (var i = 0; i < list.Count; i++)
                {
                    Add(text, list[i], $"{path}[{i}]");
                }

                break;
            default:
                text.Append(path).Append(" a ").Append(value.GetType().Name).Append('\n');
                foreach (
                    var property in value
                        .GetType()
                        .GetProperties(BindingFlags.Public | BindingFlags.Instance)
                        .Where(property => property.GetIndexParameters().Length == 0)
                        .OrderBy(property => property.Name, StringComparer.Ordinal)
                )
                {
                    Add(text, property.GetValue(value), $"{path}.{property.Name}");
                }

                break;
        }
    }
}
