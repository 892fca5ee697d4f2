"""Given names that people write beside what is theirs; from memory, many lands, common practice, no source.

A name that is also a food's word or a kind of one (basil, ginger, charlotte, victoria) counts only where its form says
that it is a person's ('s, brackets).
"""

_WRITTEN = """
aaron abbas abbu abby abdul abi abigail abu abuela abuelo adaeze adam ade adele adnan adrian agnes agnieszka ahmed
aidan aiden aiko ailsa aisha aisling aiysha akira al alan alana alasdair alba albert alberto alec alejandro aleks
alessandro alessia alex alexa alexander alexandra alexis alfie alfred ali alice alicia alina alison alistair aliyah
aly alya alyssa amanda amara amber amelia amelie amina amir amit amita amma ammi amy ana anastasia anders andrea
andreas andrei andrew andy angela angelo angie angus anika anil anisa anita anja anjali ann anna annabel anne annie
anouk anthony antoine anton antonia antonio anya appa april archie ari ariana ariel arjun arlo arnold arthur arturo
arun asha ashley asif astrid athena audrey auntie aunty austin ava ayesha ayo ayumi aziz baba babcia barbara barney
barry bart basia bea beatrice beatriz beau becca becky bella ben benjamin bernard bernie bert beth bethany betty bev
bhai bianca bibi bill billie billy bjorn blake bob bobby bogdan bonnie boris brad bradley brandon brenda brendan brent
brett brian bridget britt brock bronwyn brooke bruce bruno bryan bryony byron caitlin callum calum cameron camila
camille cara carl carla carlo carlos carmen carol carolina caroline carrie carter casey cath catherine cathy cecilia
celia chantal charis charles charlie chen cheryl chidi chidinma chloe chris chrissie christian christina christine
christopher chuck cian ciara cindy claire clara claude claudia cliff clive colin colm connie connor conor corinne
craig cristina curtis cynthia dadi dafydd daisy dale damian damien dan dana daniel daniela danielle danny daphne
darren dave david dean deb debbie deborah declan deepa deepak delia della denis denise dennis derek desmond dev devon
diana diane dida didi diego dimitri dina dinah dolores dom dominic don donal donald donna dora doreen doris dorothy
doug dougie douglas duncan dylan eamon ed eddie edith edward edwin efua eileen elaine eleanor elena eli elif elijah
elin elisa elise eliza elizabeth ella ellen ellie elliot elsa elsie emeka emil emilia emily emma emmanuel enrique eric
erica erik erin ernest esme esra esther ethan etta euan eugene eunice eva evan eve evelyn evie ewa ewan fabio faith
farah fatima fatou felicity felix femi feng fergus fernando fiona flo flora fran frances francesca francesco francis
francisco frank frankie fred freddie freddy freya fumiko gabe gabriel gabriela gail gareth gary gavin gemma geoff
george georgia georgie gerald gerard gerry giles gill gillian gina giorgio giovanni gita giulia gladys glen glenn
gloria goran gordon grace graeme grandad granddad grandma grandpa greg greta guillermo gunther gus gustavo gwen
gwyneth hadiza hadley hakan haley halmoni hamish hamza hana hanna hannah hans harald harriet harris harry harvey
hassan hattie hazel heather hector heidi helen helena helga henrik henry hilary hilda hiro hiroshi holly howard hubby
hugh hugo huma humphrey hussein ian ibrahim ida ifeanyi igor ike ilaria imogen imran ines inez ingrid ioana iona ira
irene irina iris isa isaac isabel isabella isha isla ismail ivan ivana ivy jackie jacob jacqui jade jake jakub jamal
james jamie jan jana jane janet janice jared jasmin jason jasper javier jay jayden jean jeanette jeff jen jenna jennie
jennifer jenny jeremy jerome jerry jess jesse jessica jessie jill jim jimmy jo joan joanna joanne joao joe joel johan
johannes john johnny jon jonas jonathan jordan jorge jose josef joseph josephine josh joshua josie joyce juan juana
judith judy jules julia julian julie julien juliet julio jun june jurgen justin kade kai kamal kamila kamran kara
karen karim karl karla kasia kat kate katerina katherine kathleen kathy katie katrin katrina katy kavita kay kayla
keiko keira keith kelechi kelly kelvin ken kenji kenneth kenny kerry kev kevin kiera kieran kim kira kiran kirsten
kirsty kofi kris krishna krista kristina kumar kurt kwame kyle lachlan laila lakshmi lana lara larry lars laszlo
latoya laura lauren laurence laurie leah leanne lee leila lena leo leon leona leonard leonie leroy lesley leslie lewis
lex liam lian libby lila lilian lily lin lina linda lindsay linh lionel lisa lisbeth liv liz liza lizzie logan lois
lola lorenzo loretta lorna lorraine lou louis louisa louise luca lucas lucia lucie lucille lucy luis luisa luka lukas
luke luna lydia lyn lynn mabel mackenzie maddie maddy madeleine mads mae maeve maggie magnus mahmoud mai maia mairi
malcolm malik mandy manuel mara marc marcel marcella marcia marco marcos marcus margaret margot maria mariam marian
marie marina mario marion marisa marjorie mark marko markus marlene marlon marta martha martina marty marvin mary
mateo mateusz mathilda matilda matt matteo matthew matthias maureen maurice mauro mavis max maxine maya mehmet mei mel
melanie melissa mercedes meredith mia micah michael michal michele michelle miguel mika mike mikhail mikko mila milan
mildred miles millie milo mimi mina ming minji miranda miriam mischa missus mitch mo mohamed mohammed moira molly mona
monica monika morag morgan moses muhammad murray myra nadia nadine naeem nana nancy nani naomi nasser nat natalia
natalie natasha nate nathan nathaniel naveed neha neil nell nelly nelson neve ngozi niall niamh nicholas nick nicky
nico nicola nicole nigel nikita nikki nikos nils nina nisha noa noah noel nonna nonno nora norma norman nuala nuno
nuria obi octavia ola olaf olga oli oliver olivia ollie olu oma omar oona opa orla oscar osman otto owen pablo paddy
paige pam pamela paola paolo papa pappou pat patience patricia patrick patty paul paula paulina paulo pavel pedro
peggy penelope penny percy perry pete peter petra phil philip philippa phillip phoebe phyllis pia pierre piotr pippa
poppy pradeep precious priscilla priya quentin quinn rachel radek rafael rahul raj raja rajesh ralph ramesh ramon
ramona rana randy rani raquel rashid raul ravi ray raymond rebecca reece reggie rena rene renee reza rhiannon rhona
rhys ricardo rich richard rick ricky rita rob robbie robert roberta roberto robin robyn rocco rod roddy rodney rodrigo
roger rohan roland roman ronald ronan ronnie rory rosa rosalind rosanna rosie ross roxanne roy ruben ruby rudi rupert
russell ruth ryan sabine sabrina sadie sahar saira sakura salim sally salma salman sam samantha sameer samir samira
samuel sandra sandy sanjay santiago sara sarah sasha saskia saul scott sean sebastian selina serena sergei sergio seth
shana shane shannon sharon shaun shauna sheena sheila shelley shona shreya sian sid sidney silvia simon simone sinead
siobhan siti sofia solomon sonia sonja sophia sophie soraya stacey stan stefan stefania stefano stella steph stephanie
stephen steve steven stewart stu stuart su sue suki sunil sunita susan susana susanna susie suzanne sven svetlana
sybil sylvia tabitha tadeusz tahir takeshi tamara tamsin tania tante tanya tariq tasha tatiana ted teddy tega temi
teresa terrence terry tess tessa thandi thea theo theodora theresa thomas tia tiago tiana tim tina toby todd tom tomas
tomasz tommaso tommy toni tony tosin tracey tracy travis trevor tricia trish tristan trudy tunde tyler tyrone uma umar
una uncle ursula uwe valentina valerie vanessa vera verity vern veronica vic vicki vicky victor vijay vikram viktor
vince vincent vinny viola violet virginia vivek vivian vlad vladimir wade wai walter wanda warren wayne wendy wes
wilbur wilf will willem william willow winnie winston wojtek xavier ximena xiu yael yan yannis yara yasmin yasmine
yiayia yolanda yosef yotam yuki yuko yusuf yvette yvonne zac zach zachary zainab zara zelda zeynep zoe zoey zofia
zuzanna
"""
GIVEN_NAMES = frozenset(_WRITTEN.split())
