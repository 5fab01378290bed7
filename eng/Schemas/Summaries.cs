using System.Reflection;
using System.Xml.Linq;
using OilCondition.Contracts;

namespace Schemas;

/// <summary>What the comments of the classes say: one text for those who program and for those who read a schema.</summary>
internal static class Summaries
{
    private static readonly Dictionary<string, string> ByMember = XDocument
        .Load(Path.ChangeExtension(typeof(ContractPart).Assembly.Location, ".xml"))
        .Descendants("member")
        .Where(member => member.Element("summary") is not null)
        .ToDictionary(
            member => member.Attribute("name")!.Value,
            member =>
                string.Join(
                    ' ',
                    member.Element("summary")!.Value.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
                ),
            StringComparer.Ordinal
        );

    public static string Of(Type type) => ByMember["T:" + type.FullName];

    public static string Of(PropertyInfo property) => ByMember[$"P:{property.DeclaringType!.FullName}.{property.Name}"];
}
