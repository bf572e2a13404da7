using Quarterlight.Planner.Library;
using Quarterlight.Planner.Mapping;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>What a team has set for itself, kept as one resource.</summary>
internal sealed class TeamSettingsDesk(TeamLibrary library)
{
    private const string Id = "team";
    private const string Name = "teamSettings/" + Id;

    /// <summary>As kept; nothing set when nothing is.</summary>
    public async Task<TeamSettings> ReadAsync(string team, CancellationToken cancellation) =>
        await library.TeamSettings.FindAsync(team, Name, cancellation).ConfigureAwait(false) ?? new TeamSettings { Name = Name };

    /// <summary>Sets them; refuses with every violation at once.</summary>
    public async Task<TeamSettings> WriteAsync(string team, TeamSettings? settings, CancellationToken cancellation)
    {
        var reader = new FieldReader();
        if (settings is null)
        {
            reader.Add("settings", "the settings are missing", "Send them; an empty message sets nothing");
        }
        else
        {
            Check(settings, reader);
        }

        reader.ThrowIfAny();
        var kept = new TeamSettings { Units = settings!.Units, CountryCode = settings.CountryCode.ToUpperInvariant() };
        return await library.TeamSettings.PutAsync(team, Id, kept, settings.Revision, cancellation).ConfigureAwait(false);
    }

    private static void Check(TeamSettings settings, FieldReader reader)
    {
        if (!Enum.IsDefined(settings.Units))
        {
            reader.Add("settings.units", $"{(int)settings.Units} is not one of the choices", "Choose metric or imperial, or leave it unspecified");
        }

        if (settings.CountryCode.Length != 0 && !(settings.CountryCode.Length == 2 && settings.CountryCode.All(char.IsAsciiLetter)))
        {
            reader.Add("settings.country_code", "this is not the code of a country", "Send two letters as in ISO 3166-1, such as GB, or nothing");
        }

        if (settings.Revision < 0)
        {
            reader.Add("settings.revision", $"the revision is {settings.Revision}", "Send the revision last read, or 0 to replace whatever is there");
        }
    }
}
