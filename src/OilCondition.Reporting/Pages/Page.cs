using System.Globalization;
using System.Reflection;
using Scriban;
using Scriban.Runtime;

namespace OilCondition.Reporting;

/// <summary>A kind of page: its template, and how a text is written in it so that it stands for itself.</summary>
internal sealed class Page(string resource, Func<string, string> escape)
{
    private readonly Lazy<Template> template = new(() =>
    {
        using var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The template {resource} is missing from the assembly.");
        using var reader = new StreamReader(stream);
        return Template.Parse(reader.ReadToEnd().Replace("\r\n", "\n"), resource);
    });

    public string Render(ScriptObject content)
    {
        var context = new TemplateContext
        {
            StrictVariables = true,
            EnableRelaxedMemberAccess = false,
            LoopLimit = 0,
        };
        context.PushCulture(CultureInfo.InvariantCulture);
        context.PushGlobal((ScriptObject)Escaped(content)!);
        return template.Value.Render(context);
    }

    /// <summary>The content with every text in it escaped, so that none can be forgotten.</summary>
    private object? Escaped(object? content)
    {
        switch (content)
        {
            case string text:
                return escape(text);
            case ScriptObject fields:
                var escaped = new ScriptObject();
                foreach (var field in fields)
                {
                    escaped[field.Key] = Escaped(field.Value);
                }

                return escaped;
            case System.Collections.IEnumerable list:
                return list.Cast<object?>().Select(Escaped).ToList();
            default:
                return content;
        }
    }
}
