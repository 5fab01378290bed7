namespace OilCondition;

/// <summary>The key of an alert: machine / charge / subject of the problem.</summary>
/// <remarks>
/// An id may itself hold slashes, as functional locations do. In a part of a key <c>%</c> is written <c>%25</c> and <c>/</c> is written <c>%2F</c>, as in
/// RFC 3986, section 2.1, so that two machines never share a key.
/// </remarks>
internal sealed record AlertKey(string MachineId, string Charge, string Subject)
{
    /// <summary>The key in its parts; null for what is no key.</summary>
    public static AlertKey? Parse(string text)
    {
        var parts = text.Split(['/'], 3);
        return parts.Length == 3 && parts.All(part => part.Trim().Length > 0)
            ? new AlertKey(Unescaped(parts[0]), parts[1], parts[2])
            : null;
    }

    /// <summary>A part of a key.</summary>
    public static string Escaped(string part) => part.Replace("%", "%25").Replace("/", "%2F");

    private static string Unescaped(string part) => part.Replace("%2F", "/").Replace("%25", "%");

    /// <summary>As the maintenance system knows it.</summary>
    /// <returns>For example <c>TURB%2F01/2026-03-14/water</c>.</returns>
    public override string ToString() => $"{Escaped(MachineId)}/{Charge}/{Subject}";
}
