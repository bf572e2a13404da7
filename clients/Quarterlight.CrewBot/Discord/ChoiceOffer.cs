using Quarterlight.Crew.Commands;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>Choices while an option is typed: there soon, or none. Whatever goes wrong, the option can still be typed out.</summary>
internal sealed class ChoiceOffer(DiscordTransportParts parts, DiscordTransportOptions options)
{
    /// <summary>Offers choices.</summary>
    public async Task OfferAsync(Interaction interaction, InteractionRecord record, CancellationToken stopping)
    {
        IReadOnlyList<OutgoingChoice> choices = await ChoicesAsync(interaction, record, stopping).ConfigureAwait(false);
        try
        {
            await parts.Responder.OfferAsync(interaction.Ticket, choices, CancellationToken.None).ConfigureAwait(false);
            record.Taken();
            record.End = InteractionEnd.Offered;
        }
        catch (DiscordException e)
        {
            // The asker has typed on by now; the next letter asks again.
            record.End = e.Fault == DiscordFault.TooLate ? InteractionEnd.TooLate : InteractionEnd.NotDelivered;
        }
    }

    private async Task<IReadOnlyList<OutgoingChoice>> ChoicesAsync(Interaction interaction, InteractionRecord record, CancellationToken stopping)
    {
        if (interaction.GuildId is not { } guild || interaction.Command is not { } data || CommandMapping.Find(data, parts.Commands) is not { } command
            || data.Options.FirstOrDefault(o => o.Focused) is not { } focused)
        {
            return [];
        }

        CrewTeam team = parts.Teams.For(guild);
        (record.What, record.Team) = (command.Name, team.Id);
        record.Planner.CountHere();
        TimeSpan left = options.ChoicesBy - record.Elapsed;
        using var limit = new CancellationTokenSource(left > TimeSpan.Zero ? left : TimeSpan.Zero, parts.Time);
        using var enough = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, stopping);
        try
        {
            // A desk that does not listen when it is called off is not waited for.
            IReadOnlyList<CrewChoice> found = await team.Desk
                .CompleteAsync(new ChatThread(team.Conversations, interaction).Own, CommandCalls.ReadTyped(data, command), focused.Name, enough.Token)
                .WaitAsync(enough.Token).ConfigureAwait(false);
            return
            [
                .. found.Select(c => new OutgoingChoice(CutText.AtWord(Markdown.Plain(c.Name), DiscordLimits.ChoiceCharacters), c.Value))
                    .Where(c => c.Name.Length > 0 && c.Value.Length is > 0 and <= DiscordLimits.ChoiceCharacters)
                    .DistinctBy(c => c.Name).Take(DiscordLimits.Choices),
            ];
        }
#pragma warning disable CA1031 // No choices are better than an error while somebody types.
        catch (Exception)
#pragma warning restore CA1031
        {
            return [];
        }
    }
}
