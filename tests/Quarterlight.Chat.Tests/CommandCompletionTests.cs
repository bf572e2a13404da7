using Grpc.Net.Client;
using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Keeping;

namespace Quarterlight.Chat.Tests;

/// <summary>Choices while an option is typed.</summary>
public sealed class CommandCompletionTests
{
    [Fact]
    public async Task Complete_NothingTyped_OffersTheScenesWithTheirCars()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        IReadOnlyList<CrewChoice> offered = await desk.CompleteAsync("plan", "scene", "");

        Assert.Equal(4, offered.Count);
        Assert.Contains(new CrewChoice("School run that goes wrong (invented), Four-door saloon (invented)", "demo-school-run"), offered);
        Assert.All(offered, c => Assert.InRange(c.Name.Length, 1, 100));
    }

    [Theory]
    [InlineData("plan", "scene", "first", "demo-driving-lesson")]
    [InlineData("plan", "scene", "less", "demo-driving-lesson")]
    [InlineData("plan", "scene", "lesson driving", "demo-driving-lesson")]
    [InlineData("plan", "scene", "drivng lesson", "demo-driving-lesson")]
    [InlineData("plan", "scene", "demo-lay", "demo-lay-by")]
    [InlineData("plan", "scene", "FERRY", "demo-ferry-queue")]
    [InlineData("what-if", "kit", "small", "demo-small")]
    [InlineData("what-if", "kit", "smal k", "demo-small")]
    [InlineData("what-if", "car", "bench", "demo-classic")]
    [InlineData("why", "talker", "neigh", "neighbour")]
    [InlineData("why", "talker", "rear", "child")]
    public async Task Complete_WhatIsTyped_OffersTheBestFirst(string command, string option, string typed, string first)
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        IReadOnlyList<CrewChoice> offered = option == "scene" ? await desk.CompleteAsync(command, option, typed) : await desk.CompleteAsync(command, option, typed, ("scene", "demo-school-run"));

        Assert.Equal(first, offered[0].Value);
    }

    [Fact]
    public async Task Complete_Talker_HangsOnTheSceneTypedOrTalkedAbout()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();
        await desk.Desk.RunAsync("talked", CommandLine.Read("scene use demo-lay-by").Call!, TestContext.Current.CancellationToken);

        IReadOnlyList<CrewChoice> talked = await desk.Desk.CompleteAsync("talked", new CrewCommandCall("why", new Dictionary<string, string>()), "talker", TestContext.Current.CancellationToken);
        IReadOnlyList<CrewChoice> typed = await desk.CompleteAsync("why", "talker", "", ("scene", "First driving lesson (invented)"));

        Assert.Equal(["Singer", "Drummer"], talked.Select(c => c.Name.Split(',')[0]));
        Assert.Equal(["Learner", "Instructor"], typed.Select(c => c.Name.Split(',')[0]));
    }

    [Theory]
    [InlineData("plan", "scene", "zzzzqq")]
    [InlineData("link", "distance", "3")]
    [InlineData("nothing", "scene", "a")]
    [InlineData("plan", "nothing", "a")]
    public async Task Complete_NothingFitting_OffersNothing(string command, string option, string typed)
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        Assert.Empty(await desk.CompleteAsync(command, option, typed));
    }

    [Fact]
    public async Task Complete_Sites_AreOfTheScenesCarAndAtMost25()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        IReadOnlyList<CrewChoice> offered = await desk.CompleteAsync("why", "site", "");

        Assert.InRange(offered.Count, 0, 25);
    }

    [Fact]
    public async Task Complete_PlannerAway_OffersNothing()
    {
        using var nobody = GrpcChannel.ForAddress("http://127.0.0.1:1");
        var desk = new TeamDesk(nobody.CreateCallInvoker(), new CrewDeskOptions(), new RecentConversations());

        Assert.Empty(await desk.CompleteAsync("c", new CrewCommandCall("plan", new Dictionary<string, string>()), "scene", TestContext.Current.CancellationToken));
    }
}
