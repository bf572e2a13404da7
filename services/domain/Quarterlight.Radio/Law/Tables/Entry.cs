using Quarterlight.Quantities;

namespace Quarterlight.Radio.Law.Tables;

/// <summary>Writes a table's rows: the document first, then the rules that stand in it.</summary>
/// <param name="Country">The table's code.</param>
/// <param name="Document">Document.</param>
/// <param name="Clause">Clause or table within it.</param>
/// <param name="Date">Edition or date of the text.</param>
/// <param name="Source">Where the figure was read, or that it was not.</param>
/// <param name="Trust">How far the figure may be trusted.</param>
internal sealed record Entry(string Country, string Document, string Clause, string Date, string Source, Trust Trust)
{
    /// <summary>Anybody may send on these terms.</summary>
    public RadioRule Exempt(double low, double high, string use, LimitKind kind, double limit, string conditions = "", double? distanceM = null, double? widestKHz = null) =>
        Rule(Licensing.LicenceExempt, low, high, use, kind, limit, conditions, distanceM, widestKHz);

    /// <summary>Only with a licence.</summary>
    public RadioRule Licensed(double low, double high, string use, LimitKind kind, double limit, string conditions = "", double? distanceM = null, double? widestKHz = null) =>
        Rule(Licensing.Licensed, low, high, use, kind, limit, conditions, distanceM, widestKHz);

    /// <summary>Nobody may.</summary>
    public RadioRule Forbidden(double low, double high, string use, string conditions = "") =>
        Rule(Licensing.Forbidden, low, high, use, LimitKind.Nothing, 0, conditions, null, null);

    private RadioRule Rule(Licensing licensing, double low, double high, string use, LimitKind kind, double limit, string conditions, double? distanceM, double? widestKHz) => new()
    {
        CountryCode = Country,
        LowMHz = low,
        HighMHz = high,
        Use = use,
        Licensing = licensing,
        LimitKind = kind,
        Limit = limit,
        LimitDistanceM = distanceM,
        WidestChannelKHz = widestKHz,
        Document = Document,
        Clause = Clause,
        Date = Date,
        Conditions = conditions,
        Provenance = new(Source, Trust),
    };
}
