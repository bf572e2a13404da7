using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;
using TeamSettings = Quarterlight.Crew.Keeping.TeamSettings;

namespace Quarterlight.Chat.Tests;

/// <summary>One team's desk: order within a conversation, memory, the team's settings, forms nobody knows.</summary>
public sealed class TeamDeskTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    [Fact]
    public async Task Ask_TwoInOneConversation_AnsweredInOrderWhileAnotherGoesAhead()
    {
        using var hold = new SemaphoreSlim(0);
        int planned = 0;
        await using CommandDesk desk = await CommandDesk.StartAsync(_ =>
        {
            // Only the first plan is held back.
            if (Interlocked.Increment(ref planned) == 1)
            {
                hold.Wait(Patience);
            }

            return new PlanPlacementResponse { Plan = new Plan { Scene = DemoData.Scenes[^1].Clone(), Best = new PlanOption() } };
        });
        var plan = new CrewQuestion { Text = "where do the mics go?" };
        Task<CrewAnswer> first = desk.Desk.AskAsync("one", plan, TestContext.Current.CancellationToken);
        Task<CrewAnswer> second = desk.Desk.AskAsync("one", new CrewQuestion { Text = "list kits" }, TestContext.Current.CancellationToken);

        CrewAnswer other = await desk.Desk.AskAsync("two", new CrewQuestion { Text = "list kits" }, TestContext.Current.CancellationToken).WaitAsync(Patience, TestContext.Current.CancellationToken);
        Assert.Equal(CrewIntent.ListKits, other.Intent);
        Assert.False(first.IsCompleted);
        Assert.False(second.IsCompleted);

        hold.Release();
        Assert.Equal(CrewIntent.Plan, (await first.WaitAsync(Patience, TestContext.Current.CancellationToken)).Intent);
        Assert.Equal(CrewIntent.ListKits, (await second.WaitAsync(Patience, TestContext.Current.CancellationToken)).Intent);
    }

    [Fact]
    public async Task Ask_OneCalledOffWhileItWaits_TheNextIsStillAnswered()
    {
        using var hold = new SemaphoreSlim(0);
        await using CommandDesk desk = await CommandDesk.StartAsync(_ =>
        {
            hold.Wait(Patience);
            return new PlanPlacementResponse { Plan = new Plan { Scene = DemoData.Scenes[^1].Clone(), Best = new PlanOption() } };
        });
        using var off = new CancellationTokenSource();
        Task<CrewAnswer> first = desk.Desk.AskAsync("one", new CrewQuestion { Text = "where do the mics go?" }, TestContext.Current.CancellationToken);
        Task<CrewAnswer> second = desk.Desk.AskAsync("one", new CrewQuestion { Text = "list kits" }, off.Token);
        Task<CrewAnswer> third = desk.Desk.AskAsync("one", new CrewQuestion { Text = "list cars" }, TestContext.Current.CancellationToken);

        await off.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => second);
        Assert.False(third.IsCompleted);
        hold.Release();

        Assert.Equal(CrewIntent.Plan, (await first.WaitAsync(Patience, TestContext.Current.CancellationToken)).Intent);
        Assert.Equal(CrewIntent.ListCabins, (await third.WaitAsync(Patience, TestContext.Current.CancellationToken)).Intent);
    }

    [Fact]
    public async Task Run_CommandThenQuestion_GoOnFromEachOther()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();
        await desk.Desk.RunAsync("c", CommandLine.Read("link distance: 150 m country: Germany scene: demo-school-run").Call!, TestContext.Current.CancellationToken);

        CrewAnswer next = await desk.Desk.AskAsync("c", new CrewQuestion { Text = "and at 200 m?" }, TestContext.Current.CancellationToken);

        Assert.Equal(CrewIntent.LinkCheck, next.Intent);
        Assert.Equal(200, desk.Radio.Setup!.FollowCar.GapM);
        Assert.Equal("DE", desk.Radio.Setup.FollowCar.CountryCode);
    }

    [Fact]
    public async Task Ask_WithAMemoryOfItsOwn_GoesOnFromThatOne()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();
        CrewAnswer lesson = await desk.Desk.AskAsync("c", new CrewQuestion { Text = "use the driving lesson" }, TestContext.Current.CancellationToken);
        await desk.Desk.AskAsync("c", new CrewQuestion { Text = "use the lay-by" }, TestContext.Current.CancellationToken);

        CrewAnswer shown = await desk.Desk.AskAsync("c", new CrewQuestion { Text = "list scenes", Memory = lesson.Memory }, TestContext.Current.CancellationToken);

        Assert.Equal("scenes/demo-driving-lesson", shown.Memory.SceneName);
    }

    [Fact]
    public async Task Ask_TeamWithUnitsAndCountry_TakesThemWhereNobodySaidOther()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();
        var pattern = new CrewQuestion { Text = "", Team = new TeamSettings(UnitPreference.Imperial, "NZ") };

        CrewAnswer team = await desk.RunAsync("law frequency: 98.1 MHz scene: demo-lay-by", pattern);
        string country = desk.Radio.LawAsked!.CountryCode;
        await desk.RunAsync("law frequency: 98.1 MHz scene: demo-lay-by country: Germany", pattern);
        await desk.RunAsync("link distance: 300", pattern);

        Assert.Equal(CrewOutcome.Answered, team.Outcome);
        Assert.Equal(DemoData.Scenes.Single(s => s.Name == "scenes/demo-lay-by").FollowCar?.CountryCode is { Length: > 0 } kept ? kept : "NZ", country);
        Assert.Equal("DE", desk.Radio.LawAsked.CountryCode);
        Assert.Equal(300 * 0.3048, desk.Radio.Setup!.FollowCar.GapM, 9);
    }

    [Fact]
    public async Task Submit_FormNobodyKnows_SaysWhatToDo()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        CrewAnswer answer = await desk.Desk.SubmitAsync("c", new CrewFormEntry("old\u0007", new Dictionary<string, string>()), TestContext.Current.CancellationToken);

        Assert.True(answer.Private);
        Assert.Equal("This form is not known any more: give the command again.", answer.Headline);
    }

    [Fact]
    public async Task Help_FirstScreen_FitsAPhone()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        CrewAnswer help = await desk.RunAsync("help");

        Assert.InRange(help.Lines.Count, 6, 9);
        Assert.All(help.Lines, l => Assert.InRange(l.Text.Length, 10, 90));
        foreach (string topic in CrewCommands.Find("help")!.Options[0].Choices.Select(c => c.Value))
        {
            CrewAnswer more = await desk.RunAsync($"help {topic}");
            Assert.StartsWith("Help with ", more.Headline, StringComparison.Ordinal);
            Assert.StartsWith("Commands: ", more.Lines[^1].Text, StringComparison.Ordinal);
            Assert.All(more.Lines[^1].Text["Commands: ".Length..].TrimEnd('.').Split(", "), c => Assert.Contains(CrewCommands.All, k => k.Name == c || k.Name.StartsWith(c + " ", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public async Task Ask_NotUnderstood_SaysWhatWasAndOffersTheNearest()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        CrewAnswer answer = await desk.Desk.AskAsync("c", new CrewQuestion { Text = "banana visor sandwich" }, TestContext.Current.CancellationToken);

        Assert.Equal(CrewOutcome.NotUnderstood, answer.Outcome);
        Assert.Contains("visor", answer.Understood, StringComparison.Ordinal);
        Assert.Equal("why not the visor for the passenger?", answer.FollowUps[0]);
    }
}
