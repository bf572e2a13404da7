using Google.Rpc;
using Grpc.Core;
using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;
using GrpcStatus = Grpc.Core.Status;

namespace Quarterlight.Chat.Tests;

/// <summary>Every refusal becomes a sentence that says what to change, in words a crew knows.</summary>
public sealed class RefusalTests
{
    [Theory]
    [InlineData("scene.talkers[1].head_poses", "The shares of the head poses sum to 0.8. Make them sum to 1.", "Please check the second talker's head poses: the shares of the head poses sum to 0.8. Make them sum to 1.")]
    [InlineData("scene.talkers[2].seat_id", "The seat rear-left is taken by two talkers. Give each a seat of their own.", "Please check the third talker's seat: the seat rear-left is taken by two talkers. Give each a seat of their own.")]
    [InlineData("cabin.measurements.shoulder_width_m", "The value is -1.4 m. It must be 0.9 to 2.2 m.", "Please check the car's shoulder width: the value is -1.4 m. It must be 0.9 to 2.2 m.")]
    [InlineData("bundle.kit.microphones", "The kit is empty. Add at least one microphone.", "Please check the kit's microphones: the kit is empty. Add at least one microphone.")]
    [InlineData("scene.shots[0].position", "The camera is inside the driver's seat. Move it clear.", "Please check the first camera's position: the camera is inside the driver's seat. Move it clear.")]
    [InlineData("changes.drive_conditions.speed_km_per_hour", "The value is not a number. Give 0 to 130 km/h.", "Please check the driving conditions' speed: the value is not a number. Give 0 to 130 km/h.")]
    [InlineData("scene.talkers[0].head_poses[2].share_fraction", "The share is 1.4. It must be above 0 to 1.", "Please check the first talker's third head pose's share of the talking: the share is 1.4. It must be above 0 to 1.")]
    [InlineData("changes.drive_conditions.open_windows[1].pane_id", "There is no such pane. Use front-left.", "Please check the driving conditions' second window's pane: there is no such pane. Use front-left.")]
    [InlineData("", "Nothing to plan. Name a scene.", "Please check the request: nothing to plan. Name a scene.")]
    public async Task Ask_FieldRefused_NamesTheFieldAndTheWayOut(string field, string description, string sentence)
    {
        CrewAnswer answer = await AskAsync(_ => throw FakePlanner.Invalid((field, description)));

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.True(answer.Private);
        Assert.Equal(sentence, answer.Headline);
    }

    [Fact]
    public async Task Ask_ManyFieldsRefused_SaysFiveAndCountsTheRest()
    {
        CrewAnswer answer = await AskAsync(_ => throw FakePlanner.Invalid([.. Enumerable.Range(0, 8).Select(i => ($"scene.talkers[{i}].vocal_effort", "Not stated. Choose one."))]));

        Assert.Equal(5, answer.Lines.Count);
        Assert.Equal("Please check the second talker's vocal effort: not stated. Choose one.", answer.Lines[0].Text);
        Assert.Equal("And 3 more of the kind.", answer.Lines[^1].Text);
    }

    [Theory]
    [InlineData(Code.NotFound, "name", "kits/gone", "The planner has no \"kits/gone\".")]
    [InlineData(Code.Internal, "reference", "ab12", "Something went wrong inside the planner.")]
    [InlineData(Code.Unauthenticated, "x", "y", "The planner does not know this key.")]
    [InlineData(Code.PermissionDenied, "x", "y", "This key does not open that.")]
    [InlineData(Code.ResourceExhausted, "x", "y", "Too many questions at once")]
    [InlineData(Code.DeadlineExceeded, "x", "y", "The planner took too long")]
    [InlineData(Code.Aborted, "x", "y", "Somebody changed it in the meantime.")]
    [InlineData(Code.Unknown, "x", "y", "Something went wrong inside the planner.")]
    public async Task Ask_OtherRefusals_PlainSentenceWithoutExceptionText(Code code, string key, string value, string start)
    {
        CrewAnswer answer = await AskAsync(_ => throw FakePlanner.Refusal(code, "REASON", key, value));

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.StartsWith(start, answer.Headline, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", answer.Headline, StringComparison.Ordinal);
        Assert.Equal(code == Code.Internal, answer.Headline.Contains("ab12", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Ask_PlannerThrows_NoExceptionTextGetsOut()
    {
        CrewAnswer answer = await AskAsync(_ => throw new InvalidOperationException("secret innards"));

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.DoesNotContain("secret", answer.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_StatusWithoutDetails_IsStillASentence()
    {
        CrewAnswer answer = await AskAsync(_ => throw new RpcException(new GrpcStatus(StatusCode.InvalidArgument, "")));

        Assert.Equal("The planner could not use the question as it was put. Show the scene and check what is in it.", answer.Headline);
    }

    [Fact]
    public async Task Ask_NoLawfulSiteLeft_NamesWhoIsUncoveredAndTheWayOut()
    {
        CrewAnswer answer = await AskAsync(request => new PlanPlacementResponse
        {
            Plan = new Plan { Scene = Scene(request), Cabin = DemoData.Cabins[0], Kit = DemoData.Kits[0], Best = new PlanOption(), UncoveredTalkerIds = { "parent", "neighbour", "child" }, Proof = new OptimalityProof { ProvedOptimal = true } },
        });

        Assert.Equal("School run that goes wrong (invented): no microphone can be placed.", answer.Headline);
        Assert.StartsWith("No microphone for Parent, Neighbour and Child: add a microphone", answer.Lines[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_PlanWithBareFields_IsAnsweredWithoutFailing()
    {
        CrewAnswer answer = await AskAsync(request => new PlanPlacementResponse
        {
            Plan = new Plan { Scene = Scene(request), Best = new PlanOption { Placements = { new TalkerPlacement { TalkerId = "parent" } } } },
        });

        Assert.Equal(CrewOutcome.Answered, answer.Outcome);
        Assert.Contains("no proof", answer.Lines[^1].Text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Ask_NamesWithMarkupFromThePlanner_AreCleaned()
    {
        CrewAnswer answer = await AskAsync(request =>
        {
            Scene scene = Scene(request);
            scene.Talkers[0].DisplayName = "@everyone **Boss**\u001b[31m";
            return new PlanPlacementResponse { Plan = new Plan { Scene = scene, Best = new PlanOption { Placements = { new TalkerPlacement { TalkerId = "parent", AimWords = "`down` <b>" } } } } };
        });

        Assert.DoesNotContain(answer.Lines, l => l.Text.Any(c => c is '@' or '*' or '`' or '<' or '>' or '\u001b'));
        Assert.DoesNotContain('@', answer.Headline);
    }

    [Fact]
    public async Task Ask_EmptyStore_OffersTheDemo()
    {
        await using FakePlanner fake = await FakePlanner.StartAsync(_ => new PlanPlacementResponse(), empty: true);

        CrewAnswer answer = await new CrewDesk(fake.Invoker, new CrewDeskOptions()).AskAsync(new CrewQuestion { Text = "where do the mics go?" }, TestContext.Current.CancellationToken);

        Assert.Equal("There is no scene to plan yet.", answer.Headline);
        Assert.Equal(["load demo"], answer.FollowUps);
    }

    [Fact]
    public async Task Ask_CalledOff_EndsAsCalledOff()
    {
        await using FakePlanner fake = await FakePlanner.StartAsync(_ => new PlanPlacementResponse());
        using var off = new CancellationTokenSource();
        await off.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => new CrewDesk(fake.Invoker, new CrewDeskOptions()).AskAsync(new CrewQuestion { Text = "help" }, off.Token));
    }

    private static Scene Scene(PlanPlacementRequest request) => DemoData.Scenes.Single(s => s.Name == request.Scene).Clone();

    private static async Task<CrewAnswer> AskAsync(Func<PlanPlacementRequest, PlanPlacementResponse> plan)
    {
        await using FakePlanner fake = await FakePlanner.StartAsync(plan);
        return await new CrewDesk(fake.Invoker, new CrewDeskOptions()).AskAsync(new CrewQuestion { Text = "where do the mics go?", Scene = "demo-school-run" }, TestContext.Current.CancellationToken);
    }
}
